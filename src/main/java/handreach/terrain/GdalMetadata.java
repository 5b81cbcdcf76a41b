package handreach.terrain;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The items of the metadata tag that GDAL writes into GeoTIFF files, {@code <Item name="…" role="…">text</Item>}. Read in one pass, so
 * that a hostile text costs no more than its length; what is not an item is passed over.
 */
final class GdalMetadata {
    private static final int MOST_ITEMS = 4096;
    private static final String OPEN = "<Item";
    private static final String CLOSE = "</Item>";

    /** One item; what it lacks is empty. */
    record Item(String name, String role, String text) {}

    private GdalMetadata() {}

    static List<Item> items(String xml) {
        List<Item> items = new ArrayList<>();
        int at = xml.indexOf(OPEN);
        while (at >= 0 && items.size() < MOST_ITEMS) {
            int end = xml.indexOf('>', at);
            int close = end < 0 ? -1 : xml.indexOf(CLOSE, end);
            if (close < 0) break;
            String head = xml.substring(at, end);
            items.add(new Item(
                    attribute(head, "name").toLowerCase(Locale.ROOT),
                    attribute(head, "role").toLowerCase(Locale.ROOT),
                    xml.substring(end + 1, close).strip()));
            at = xml.indexOf(OPEN, close);
        }
        return items;
    }

    private static String attribute(String head, String key) {
        int at = head.indexOf(' ' + key + "=\"");
        if (at < 0) return "";
        int from = at + key.length() + 3;
        int to = head.indexOf('"', from);
        return to < 0 ? "" : head.substring(from, to);
    }
}
