package dev.slowpoint.api;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Which pages the guide has, in which order they are listed, and which files of the source tree they are made of. */
final class GuideMap {

    /** Where the pages are. */
    static final String PATH = "/docs/guide";

    /** The page that leads to all others. */
    static final String FIRST = "index";

    /** The page that has no file: it is made of the parameter set. */
    static final String SOURCES = "sources";

    /** The pages of the guide and those of the contract, by their folders in the tree; behind each its folder in the jar. */
    private static final Map<String, String> FOLDERS =
            Map.of("service/src/main/guide/", "guide/", "api-spec/", "contract/");

    /** What the service shows of the tree besides. */
    private static final Map<String, String> SERVED = Map.of("api-spec/openapi.yaml", "/openapi.yaml");

    private static final Page INDEX = guide(FIRST, "Guide");

    private static final List<Group> GROUPS = List.of(
            new Group(
                    "Understand",
                    List.of(
                            guide("numbers", "Numbers"),
                            guide("trust", "Trust"),
                            guide("models", "Models"),
                            new Page(SOURCES, "Sources", ""))),
            new Group(
                    "Build",
                    List.of(
                            new Page("device", "Devices", "api-spec/docs/device-guide.md"),
                            new Page("kit", "Kit", "api-spec/README.md"),
                            new Page("versions", "Versions", "api-spec/docs/versioning.md"))),
            new Group(
                    "Run",
                    List.of(
                            guide("operating", "Operating"),
                            guide("access", "Access"),
                            guide("overlay", "Own foods and rules"),
                            guide("watching", "Watching"),
                            guide("runbook", "Runbook"),
                            guide("failure", "Failure"),
                            guide("capacity", "Capacity"),
                            guide("threat-model", "Threats"))));

    private GuideMap() {}

    /**
     * A page.
     *
     * @param name last part of its address
     * @param label what it is called in the list of pages
     * @param file that it is made of, by its path in the source tree; empty if there is none
     */
    record Page(String name, String label, String file) {

        /** Path at which it is served. */
        String address() {
            return name.equals(FIRST) ? PATH : PATH + "/" + name;
        }

        /** Where its file is on the class path. */
        String resource() {
            return FOLDERS.entrySet().stream()
                    .filter(folder -> file.startsWith(folder.getKey()))
                    .map(folder ->
                            folder.getValue() + file.substring(folder.getKey().length()))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("page " + name + " has no file that is packed"));
        }
    }

    private record Group(String label, List<Page> pages) {}

    private static Page guide(String name, String label) {
        return new Page(name, label, "service/src/main/guide/" + name + ".md");
    }

    /** The pages that are made of files. */
    static List<Page> files() {
        return all().filter(page -> !page.file().isEmpty()).toList();
    }

    private static Stream<Page> all() {
        return Stream.concat(Stream.of(INDEX), GROUPS.stream().flatMap(group -> group.pages().stream()));
    }

    /** Where the service shows a file of the source tree, if it does. */
    static Optional<String> address(String file) {
        Map<String, String> shown = new TreeMap<>(SERVED);
        files().forEach(page -> shown.put(page.file(), page.address()));
        return Optional.ofNullable(shown.get(file));
    }

    /** The list of all pages, as seen from one of them. */
    static String navigation(String current) {
        StringBuilder list = new StringBuilder("<nav aria-label=\"Pages of the guide\">\n<p>");
        link(list, INDEX, current);
        list.append(" <a href=\"/docs\">Contract</a> <a href=\"/\">Try a plan</a></p>\n");
        for (Group group : GROUPS) {
            list.append("<p><b>").append(group.label()).append("</b>");
            for (Page page : group.pages()) {
                list.append(' ');
                link(list, page, current);
            }
            list.append("</p>\n");
        }
        return list.append("</nav>\n").toString();
    }

    private static void link(StringBuilder list, Page page, String current) {
        list.append("<a href=\"")
                .append(page.address())
                .append(page.name().equals(current) ? "\" aria-current=\"page\">" : "\">")
                .append(page.label())
                .append("</a>");
    }
}
