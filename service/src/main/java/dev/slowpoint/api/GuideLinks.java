package dev.slowpoint.api;

import java.net.URI;
import java.util.Optional;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;

/**
 * Makes the links of a file those of its page. Links from file to file lead from page to page; a link to a file of the tree
 * that the service does not show becomes the path of that file, which people can find in the source.
 */
final class GuideLinks extends AbstractVisitor {

    private final URI home;

    /**
     * Of one file.
     *
     * @param file its path in the source tree
     */
    GuideLinks(String file) {
        this.home = URI.create("/" + file);
    }

    @Override
    public void visit(Link link) {
        visitChildren(link);
        URI target = URI.create(link.getDestination());
        if (target.isAbsolute()
                || target.getPath().isEmpty()
                || target.getPath().startsWith("/")) {
            return;
        }
        String file = home.resolve(target).getPath().substring(1);
        Optional<String> address = GuideMap.address(file);
        if (address.isPresent()) {
            link.setDestination(address.get() + (target.getFragment() == null ? "" : "#" + target.getFragment()));
        } else {
            unlink(link, file);
        }
    }

    private static void unlink(Link link, String file) {
        Code path = new Code(file);
        if (link.getFirstChild() instanceof Text text && text.getLiteral().equals(link.getDestination())) {
            link.insertBefore(path);
        } else {
            for (Node child = link.getFirstChild(); child != null; child = link.getFirstChild()) {
                link.insertBefore(child);
            }
            link.insertBefore(new Text(" ("));
            link.insertBefore(path);
            link.insertBefore(new Text(")"));
        }
        link.unlink();
    }
}
