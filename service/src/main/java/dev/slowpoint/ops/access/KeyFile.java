package dev.slowpoint.ops.access;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Reads the file of keys: a table with commas, one key a line, that people can read and review. Lines that begin with
 * {@code #} are comments. A client has one or two keys; its lines say the same of how much it may ask.
 */
final class KeyFile {

    /** The first line that is no comment. */
    static final String HEADER = "client,sha256,perSecond,burst,atOnce,from,until";

    static final int LONGEST = 1 << 20;
    static final int MOST_CLIENTS = 1_000;

    private static final List<String> COLUMNS = List.of(HEADER.split(",", -1));
    private static final Pattern CLIENT = Pattern.compile("[a-z0-9][a-z0-9-]{0,39}");
    private static final Pattern HASH = Pattern.compile("[0-9a-fA-F]{" + Key.Hash.HEX_DIGITS + "}");
    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,6}");
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,6}(\\.[0-9]{1,3})?");

    private final List<Key> keys = new ArrayList<>();
    private final Map<String, Allowance> clients = new HashMap<>();
    private final Map<String, Integer> keysOf = new HashMap<>();
    private final Set<Long> starts = new HashSet<>();

    private KeyFile() {}

    /**
     * Reads the content of a file.
     *
     * @throws KeyFileFault if any of it cannot be taken
     */
    static KeyRing read(byte[] content) throws KeyFileFault {
        if (content.length > LONGEST) {
            throw new KeyFileFault("longer than 1 MiB");
        }
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(content))
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            throw new KeyFileFault("not UTF-8");
        }
        KeyFile file = new KeyFile();
        boolean headed = false;
        int number = 0;
        for (String line : text.split("\r?\n", -1)) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            if (headed) {
                file.add(number, line);
            } else if (line.strip().equals(HEADER)) {
                headed = true;
            } else {
                throw new KeyFileFault(number, "the first line must be " + HEADER);
            }
        }
        if (file.keys.isEmpty()) {
            throw new KeyFileFault("holds no key");
        }
        return new KeyRing(file.keys, file.clients);
    }

    private void add(int line, String text) throws KeyFileFault {
        String[] cells = text.split(",", -1);
        if (cells.length != COLUMNS.size()) {
            throw new KeyFileFault(line, "has " + cells.length + " columns, but must have " + COLUMNS.size());
        }
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < cells.length; i++) {
            row.put(COLUMNS.get(i), cells[i].strip());
        }
        String client = row.getOrDefault("client", "");
        if (!CLIENT.matcher(client).matches()) {
            throw new KeyFileFault(line, "client", "must be 1 to 40 of a-z, 0-9 and -");
        }
        Key.Hash hash = hash(line, row.getOrDefault("sha256", ""));
        Allowance allowance = allowance(line, row);
        Instant from = moment(line, "from", row, Instant.MIN);
        Instant until = moment(line, "until", row, Instant.MAX);
        if (!from.isBefore(until)) {
            throw new KeyFileFault(line, "until", "must be after from");
        }
        if (keysOf.merge(client, 1, Integer::sum) > 2) {
            throw new KeyFileFault(line, "client", "a client has at most two keys");
        }
        Allowance before = clients.putIfAbsent(client, allowance);
        if (before != null && !before.equals(allowance)) {
            throw new KeyFileFault(line, "both keys of a client must say the same of perSecond, burst and atOnce");
        }
        if (clients.size() > MOST_CLIENTS) {
            throw new KeyFileFault(line, "client", "more than " + MOST_CLIENTS + " clients");
        }
        if (!starts.add(hash.start())) {
            throw new KeyFileFault(line, "sha256", "stands in the file twice");
        }
        keys.add(new Key(client, hash, from, until));
    }

    private static Key.Hash hash(int line, String text) throws KeyFileFault {
        if (Key.hasForm(text)) {
            throw new KeyFileFault(
                    line, "sha256", "is a key, not its hash. Whoever read this file has it: make a new one");
        }
        if (!HASH.matcher(text).matches()) {
            throw new KeyFileFault(line, "sha256", "must be 64 hexadecimal digits");
        }
        Key.Hash hash = Key.Hash.parse(text.toLowerCase(Locale.ROOT));
        if (hash.isMadeUp()) {
            throw new KeyFileFault(line, "sha256", "is the hash of no random key");
        }
        return hash;
    }

    private static Allowance allowance(int line, Map<String, String> row) throws KeyFileFault {
        double perSecond = Double.parseDouble(digits(line, "perSecond", row, NUMBER));
        int burst = Integer.parseInt(digits(line, "burst", row, WHOLE));
        int atOnce = Integer.parseInt(digits(line, "atOnce", row, WHOLE));
        try {
            return new Allowance(perSecond, burst, atOnce);
        } catch (IllegalArgumentException outOfRange) {
            String what = String.valueOf(outOfRange.getMessage());
            int end = what.indexOf(' ');
            throw new KeyFileFault(line, what.substring(0, end), what.substring(end + 1));
        }
    }

    private static String digits(int line, String column, Map<String, String> row, Pattern form) throws KeyFileFault {
        String text = row.getOrDefault(column, "");
        if (!form.matcher(text).matches()) {
            throw new KeyFileFault(
                    line, column, form == WHOLE ? "must be a whole number" : "must be a number such as 5 or 0.5");
        }
        return text;
    }

    /** A day begins at midnight UTC. */
    private static Instant moment(int line, String column, Map<String, String> row, Instant absent)
            throws KeyFileFault {
        String text = row.getOrDefault(column, "");
        if (text.isEmpty()) {
            return absent;
        }
        try {
            return text.length() == "2026-01-31".length()
                    ? LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant()
                    : Instant.parse(text);
        } catch (DateTimeException unreadable) {
            throw new KeyFileFault(line, column, "must be a day, 2026-12-31, or a moment, 2026-12-31T22:00:00Z");
        }
    }
}
