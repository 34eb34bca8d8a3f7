package dev.slowpoint.api;

import dev.slowpoint.food.Mark;
import dev.slowpoint.parameters.ParameterSet;
import dev.slowpoint.parameters.ParameterSets;
import dev.slowpoint.parameters.Sources;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableBody;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.ext.heading.anchor.IdGenerator;
import org.commonmark.node.Code;
import org.commonmark.node.Document;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.node.Text;

/**
 * The page that tells where each number comes from, made from a parameter set. It is built as a document and not as
 * Markdown, so that nothing that stands in a file can be taken for more than text.
 */
final class SourcesPage {

    /** Cells that say enough without the name of their column. */
    private static final String VALUE = "value";

    private static final String UNIT = "unit";

    /** Words in a column of units where there is no unit. */
    private static final Set<String> NO_UNIT = Set.of("-", "id");

    private final Document document = new Document();

    private SourcesPage() {}

    /**
     * The page for the current set.
     *
     * @param sets the sets there are
     * @param forAll whether all who can read the page may read the catalogues too; if not, it tells nothing of an overlay
     */
    static Node of(ParameterSets sets, boolean forAll) {
        ParameterSet current = sets.current();
        Sources sources = current.sources();
        Optional<Sources.Head> overlay = sources.overlay();
        SourcesPage page = new SourcesPage();
        page.heading(1, "Sources");
        if (overlay.isPresent() && !forAll) {
            ParameterSet base = sets.find(overlay.get().base()).orElseThrow();
            page.set(base);
            page.paragraph(
                    new Text(
                            "Whoever runs this service has added foods or rules of their own. As a key or token is needed to ask here, they"
                                    + " are not told on this page, which needs none: the catalogues tell them to those who have one."));
            page.tables(base.sources());
            return page.document;
        }
        page.set(current);
        overlay.ifPresent(page::overlay);
        page.tables(sources);
        return page.document;
    }

    private void set(ParameterSet set) {
        paragraph(
                new Text("Every number that a plan rests on stands in a file of the parameter set "),
                new Code(set.version()),
                new Text(", with where it comes from and a mark that says how it is known. This page is made from these"
                        + " files when the service starts. Their digest, of which an answer shows the beginning, is "),
                new Code(set.digest()),
                new Text("."));
        paragraph(
                new Text("What each mark means stands under "),
                link(GuideMap.PATH + "/trust", "how far to trust the numbers"),
                new Text(
                        ". The words before the values are the columns of the file; units stand in their names, or behind"
                                + " the value."));
    }

    private void overlay(Sources.Head overlay) {
        paragraph(
                new Text("Rows marked "),
                new Code("own"),
                new Text(" are no part of the published set "),
                new Code(overlay.base()),
                new Text(": whoever runs this service added them with the overlay "),
                new Code(overlay.name()),
                new Text(overlay.note().isEmpty() ? "." : ", of which it says: " + overlay.note()));
    }

    private void tables(Sources sources) {
        heading(2, "How the values are known");
        marks(sources);
        heading(2, "Files");
        IdGenerator ids = IdGenerator.builder().build();
        TableBody files = table("file", "what it holds", "rows");
        for (Sources.Table table : sources.tables()) {
            row(
                    files,
                    table.entries().isEmpty()
                            ? new Text(table.file())
                            : link("#" + ids.generateId(table.file()), table.file()),
                    new Text(table.what()),
                    new Text(String.valueOf(table.rows())));
        }
        paragraph(new Text(
                "Files without a link here hold the rows of published tables; where each of these was read stands"
                        + " in tables.csv."));
        for (Sources.Table table : sources.tables()) {
            if (!table.entries().isEmpty()) {
                file(table);
            }
        }
    }

    private void marks(Sources sources) {
        Map<Mark, Integer> counts = new EnumMap<>(Mark.class);
        sources.tables().stream()
                .flatMap(table -> table.entries().stream())
                .forEach(entry -> counts.merge(entry.mark(), 1, Integer::sum));
        TableBody body = table("mark", "values");
        counts.forEach((mark, count) -> row(body, new Code(mark.name()), new Text(count.toString())));
        paragraph(new Text("A row of a file counts once, or once for each part of it that has a mark of its own."));
    }

    private void file(Sources.Table table) {
        heading(2, table.file());
        paragraph(new Text(table.what() + "."));
        boolean noted = table.entries().stream().anyMatch(entry -> !entry.note().isEmpty());
        TableBody body =
                noted ? table("item", "value", "mark", "source", "note") : table("item", "value", "mark", "source");
        for (Sources.Entry entry : table.entries()) {
            TableRow row = row(
                    body,
                    new Text(entry.item()),
                    new Text(values(entry.values())),
                    new Code(entry.mark().name()),
                    new Text(entry.source()));
            if (noted) {
                row.appendChild(cell(false, new Text(entry.note())));
            }
            if (entry.own()) {
                Node item = row.getFirstChild();
                item.appendChild(new Text(" "));
                item.appendChild(new Code("own"));
            }
        }
    }

    /** The cells as one line; a unit goes with the cell before it. */
    private static String values(List<Sources.Cell> cells) {
        StringBuilder line = new StringBuilder();
        for (Sources.Cell cell : cells) {
            if (cell.column().equals(UNIT) && NO_UNIT.contains(cell.text())) {
                continue;
            }
            if (!line.isEmpty()) {
                line.append(cell.column().equals(UNIT) ? " " : "; ");
            }
            if (!cell.column().equals(VALUE) && (!cell.column().equals(UNIT) || line.isEmpty())) {
                line.append(cell.column()).append(' ');
            }
            line.append(cell.text());
        }
        return line.toString();
    }

    private void heading(int level, String text) {
        Heading heading = new Heading();
        heading.setLevel(level);
        heading.appendChild(new Text(text));
        document.appendChild(heading);
    }

    private void paragraph(Node... parts) {
        Paragraph paragraph = new Paragraph();
        for (Node part : parts) {
            paragraph.appendChild(part);
        }
        document.appendChild(paragraph);
    }

    private static Link link(String address, String text) {
        Link link = new Link();
        link.setDestination(address);
        link.appendChild(new Text(text));
        return link;
    }

    private TableBody table(String... columns) {
        TableRow names = new TableRow();
        for (String column : columns) {
            names.appendChild(cell(true, new Text(column)));
        }
        TableHead head = new TableHead();
        head.appendChild(names);
        TableBody body = new TableBody();
        TableBlock table = new TableBlock();
        table.appendChild(head);
        table.appendChild(body);
        document.appendChild(table);
        return body;
    }

    private static TableRow row(TableBody body, Node... cells) {
        TableRow row = new TableRow();
        for (Node content : cells) {
            row.appendChild(cell(false, content));
        }
        body.appendChild(row);
        return row;
    }

    private static TableCell cell(boolean header, Node content) {
        TableCell cell = new TableCell();
        cell.setHeader(header);
        cell.appendChild(content);
        return cell;
    }
}
