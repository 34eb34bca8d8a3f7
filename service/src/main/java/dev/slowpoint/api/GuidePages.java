package dev.slowpoint.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.text.TextContentRenderer;
import org.springframework.core.io.ClassPathResource;

/** The guide as pages, made from its Markdown and from a parameter set when the service starts. */
final class GuidePages {

    static final String STYLE = """
            :root{color-scheme:light dark;--ink:#1c1f22;--paper:#fcfcfa;--faint:#5d656b;--line:#d5d8d6;--block:#f1f2ef;--link:#0a5c66}
            @media (prefers-color-scheme:dark){:root{--ink:#e6e8e6;--paper:#16191b;--faint:#a3abb0;--line:#3a4044;--block:#202427;--link:#7fc9d2}}
            body{font:16px/1.55 system-ui,sans-serif;color:var(--ink);background:var(--paper);max-width:52rem;margin:0 auto;padding:1rem 1rem 4rem;overflow-wrap:anywhere}
            h1{font-size:1.7rem;line-height:1.2;margin:1rem 0 .6rem}h2{font-size:1.25rem;margin:2.2rem 0 .5rem}h3{font-size:1.05rem;margin:1.6rem 0 .4rem}
            a{color:var(--link)}nav{font-size:.9rem;color:var(--faint);border-bottom:1px solid var(--line);padding-bottom:.5rem}
            nav p{margin:0}nav b{font-weight:600;margin-right:.6rem}nav a{display:inline-block;padding:.2rem 0;margin-right:.6rem}
            nav [aria-current]{color:var(--ink);font-weight:600;text-decoration:none}
            code{font:.9em/1.45 ui-monospace,monospace;background:var(--block);padding:.1em .25em;border-radius:3px}
            pre{background:var(--block);padding:.7rem .9rem;overflow-x:auto;border-radius:4px}pre code{padding:0;overflow-wrap:normal}
            .wide{overflow-x:auto}table{border-collapse:collapse;font-size:.93rem;overflow-wrap:normal}
            th,td{border-bottom:1px solid var(--line);padding:.35em .7em .35em 0;text-align:left;vertical-align:top}
            """;

    /** Nothing but the style of the pages may be used by them. */
    static final String POLICY = "default-src 'none'; style-src 'sha256-" + LogPage.hash(STYLE)
            + "'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private static final List<Extension> EXTENSIONS =
            List.of(TablesExtension.create(), HeadingAnchorExtension.create());

    private final Map<String, byte[]> pages = new TreeMap<>();

    /**
     * All pages.
     *
     * @param sources the page that has no file
     */
    GuidePages(Node sources) {
        Parser parser = Parser.builder().extensions(EXTENSIONS).build();
        for (GuideMap.Page page : GuideMap.files()) {
            Node document = parser.parse(read(page.resource()));
            document.accept(new GuideLinks(page.file()));
            pages.put(page.name(), page(page.name(), document));
        }
        pages.put(GuideMap.SOURCES, page(GuideMap.SOURCES, sources));
    }

    private static String read(String resource) {
        try {
            return new ClassPathResource(resource).getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All pages in UTF-8, by their names. */
    Map<String, byte[]> all() {
        return Collections.unmodifiableMap(pages);
    }

    private static byte[] page(String name, Node document) {
        HtmlRenderer renderer = HtmlRenderer.builder()
                .extensions(EXTENSIONS)
                // No page is meant to hold a tag; one in a file is shown as it stands.
                .escapeHtml(true)
                .build();
        // What is wider than a telephone moves in a frame of its own, also by keyboard.
        String body = renderer.render(document)
                .replace("<pre>", "<pre tabindex=\"0\">")
                .replace("<th></th>", "<td></td>")
                .replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>")
                .replace("</table>", "</table></div>");
        return ("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>"
                        + LogPage.escaped(title(document))
                        + "</title><meta name=\"viewport\" content=\"width=device-width\"><style>" + STYLE
                        + "</style></head><body>\n" + GuideMap.navigation(name) + "<main>\n" + body
                        + "</main>\n</body></html>\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String title(Node document) {
        return document.getFirstChild() instanceof Heading heading
                ? TextContentRenderer.builder().build().render(heading)
                : "Guide";
    }
}
