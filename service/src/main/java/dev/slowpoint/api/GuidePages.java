package dev.slowpoint.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.text.TextContentRenderer;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** The guide as pages, made from its Markdown when the service starts. */
final class GuidePages {

    /** The page that leads to all others. */
    static final String FIRST = "index";

    /** Where the pages are. */
    static final String PATH = "/docs/guide";

    private static final String FILES = "classpath:/guide/*.md";
    private static final String ENDING = ".md";

    static final String STYLE = """
            :root{color-scheme:light dark;--ink:#1c1f22;--paper:#fcfcfa;--faint:#5d656b;--line:#d5d8d6;--block:#f1f2ef;--link:#0a5c66}
            @media (prefers-color-scheme:dark){:root{--ink:#e6e8e6;--paper:#16191b;--faint:#a3abb0;--line:#3a4044;--block:#202427;--link:#7fc9d2}}
            body{font:16px/1.55 system-ui,sans-serif;color:var(--ink);background:var(--paper);max-width:52rem;margin:0 auto;padding:1rem 1rem 4rem;overflow-wrap:anywhere}
            h1{font-size:1.7rem;line-height:1.2;margin:1rem 0 .6rem}h2{font-size:1.25rem;margin:2.2rem 0 .5rem}h3{font-size:1.05rem;margin:1.6rem 0 .4rem}
            a{color:var(--link)}nav{font-size:.95rem;color:var(--faint)}
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

    GuidePages() {
        Parser parser = Parser.builder().extensions(EXTENSIONS).build();
        for (Resource file : files()) {
            String name = String.valueOf(file.getFilename());
            Node document = parser.parse(read(file));
            pages.put(name.substring(0, name.length() - ENDING.length()), page(document));
        }
    }

    private static List<Resource> files() {
        try {
            return List.of(new PathMatchingResourcePatternResolver().getResources(FILES)).stream()
                    .sorted(Comparator.comparing(file -> String.valueOf(file.getFilename())))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String read(Resource file) {
        try {
            return file.getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All pages in UTF-8, by their names. */
    Map<String, byte[]> all() {
        return Collections.unmodifiableMap(pages);
    }

    private static byte[] page(Node document) {
        document.accept(new ToPages());
        HtmlRenderer renderer = HtmlRenderer.builder()
                .extensions(EXTENSIONS)
                // The files are ours; a tag in one is meant to be seen.
                .escapeHtml(true)
                .build();
        // A table wider than a telephone moves in a frame of its own.
        String body = renderer.render(document)
                .replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>")
                .replace("</table>", "</table></div>");
        String title = title(document);
        return ("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>" + LogPage.escaped(title)
                        + "</title><meta name=\"viewport\" content=\"width=device-width\"><style>" + STYLE
                        + "</style></head><body>\n<nav><a href=\"" + PATH + "\">Guide</a></nav>\n<main>\n" + body
                        + "</main>\n</body></html>\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String title(Node document) {
        return document.getFirstChild() instanceof Heading heading
                ? TextContentRenderer.builder().build().render(heading)
                : "Guide";
    }

    /** Links from file to file lead from page to page. */
    private static final class ToPages extends AbstractVisitor {
        @Override
        public void visit(Link link) {
            String target = link.getDestination();
            int anchor = target.indexOf('#');
            String file = anchor < 0 ? target : target.substring(0, anchor);
            if (file.endsWith(ENDING) && !file.contains("/")) {
                link.setDestination(PATH + "/" + file.substring(0, file.length() - ENDING.length())
                        + (anchor < 0 ? "" : target.substring(anchor)));
            }
            visitChildren(link);
        }
    }
}
