package boundwright.store.calendar;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads calendars by the letter of RFC 5545 (its grammar from memory, sections named at each rule) and takes nothing that it does not demand or
 * allow. It shares nothing with the program: no library, no class of it.
 */
final class StrictReader {
  private static final Pattern LINE = Pattern.compile("([A-Z-]+)((?:;[A-Z-]+=(?:[^\";:,\\x00-\\x1f]+|\"[^\"\\x00-\\x1f]*\"))*):(.*)", Pattern.DOTALL);
  private static final Pattern TEXT = Pattern.compile("(?:[^\\\\;,\\x00-\\x08\\x0a-\\x1f\\x7f]|\\\\[\\\\;,nN])*");
  private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss");
  private static final Set<String> TEXTS = Set.of("SUMMARY", "DESCRIPTION", "LOCATION", "UID", "NAME", "PRODID");

  private StrictReader() {}

  /** A line: its parameters as they stand, and its value. */
  record Line(String name, String parameters, String value) {}

  /** A component with its lines and the components in it. */
  record Part(String name, List<Line> lines, List<Part> parts) {
    /** The one value of a property. */
    String value(String property) {
      List<String> all = lines.stream().filter(l -> l.name().equals(property)).map(Line::value).toList();
      check(all.size() == 1, property + " stands " + all.size() + " times in " + name);
      return all.get(0);
    }

    boolean has(String property) {
      return lines.stream().anyMatch(l -> l.name().equals(property));
    }

    Line line(String property) {
      value(property);
      return lines.stream().filter(l -> l.name().equals(property)).findFirst().orElseThrow();
    }
  }

  /** An event as a reader sees it. */
  record Event(String uid, String summary, String location, String description, boolean wholeDay, Instant start, Instant end, int sequence, String status, Instant stamp) {
    /** What somebody sees of it. */
    String content() {
      return summary + "|" + location + "|" + description + "|" + wholeDay + start + end + status;
    }
  }

  /** The events by UID. */
  static Map<String, Event> events(byte[] file) {
    Part calendar = calendar(file);
    Map<String, Part> zones = new LinkedHashMap<>();
    calendar.parts().stream().filter(p -> p.name().equals("VTIMEZONE")).forEach(z -> check(zones.put(z.value("TZID"), z) == null, "a zone stands twice"));
    Map<String, Event> out = new LinkedHashMap<>();
    for (Part p : calendar.parts()) {
      if (p.name().equals("VEVENT")) {
        Event e = event(p, zones);
        check(out.put(e.uid(), e) == null, "the UID " + e.uid() + " stands twice"); // 3.8.4.7
      }
    }
    return out;
  }

  /** 3.6: what must be in a calendar, and how often. */
  static Part calendar(byte[] file) {
    Deque<Part> open = new ArrayDeque<>();
    Part root = new Part("", new ArrayList<>(), new ArrayList<>());
    open.push(root);
    for (String line : lines(file)) {
      Matcher m = LINE.matcher(line);
      check(m.matches(), "no content line: " + line); // 3.1
      String name = m.group(1);
      if (name.equals("BEGIN")) {
        Part part = new Part(m.group(3), new ArrayList<>(), new ArrayList<>());
        open.element().parts().add(part);
        open.push(part);
      } else if (name.equals("END")) {
        check(open.pop().name().equals(m.group(3)), "END:" + m.group(3) + " ends nothing");
      } else {
        check(open.size() > 1, "a property outside of the calendar");
        check(!TEXTS.contains(name) || TEXT.matcher(m.group(3)).matches(), "badly escaped: " + line); // 3.3.11
        open.element().lines().add(new Line(name, m.group(2), m.group(3)));
      }
    }
    check(open.size() == 1 && root.parts().size() == 1 && root.parts().get(0).name().equals("VCALENDAR"), "not one calendar");
    Part calendar = root.parts().get(0);
    check(calendar.value("VERSION").equals("2.0"), "VERSION");
    calendar.value("PRODID");
    return calendar;
  }

  /** 3.1: lines end with CR LF, have at most 75 octets, and are unfolded before they are read; each is UTF-8 by itself here. */
  static List<String> lines(byte[] file) {
    List<String> out = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < file.length; i++) {
      check(file[i] != '\n' || (i > 0 && file[i - 1] == '\r'), "a line feed alone");
      check(file[i] != '\r' || (i + 1 < file.length && file[i + 1] == '\n'), "a carriage return alone");
      if (file[i] == '\n') {
        byte[] line = Arrays.copyOfRange(file, from, i - 1);
        check(line.length <= 75, "a line of " + line.length + " octets");
        check(line.length > 0, "an empty line");
        String text = utf8(line);
        if (text.charAt(0) == ' ' || text.charAt(0) == '\t') {
          out.set(out.size() - 1, out.get(out.size() - 1) + text.substring(1));
        } else {
          out.add(text);
        }
        from = i + 1;
      }
    }
    check(from == file.length, "the last line does not end");
    return out;
  }

  private static String utf8(byte[] line) {
    try {
      return StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT).decode(ByteBuffer.wrap(line)).toString();
    } catch (CharacterCodingException e) {
      throw new AssertionError("a line that is no UTF-8, so a character was cut", e);
    }
  }

  /** 3.6.1 */
  private static Event event(Part p, Map<String, Part> zones) {
    Set<String> seen = new HashSet<>();
    p.lines().forEach(l -> check(seen.add(l.name()), l.name() + " twice in an event"));
    check(p.parts().isEmpty(), "something in an event");
    String stamp = p.value("DTSTAMP");
    check(stamp.endsWith("Z"), "DTSTAMP is not in UTC"); // 3.8.7.2
    Line start = p.line("DTSTART");
    Line end = p.line("DTEND");
    boolean day = start.parameters().equals(";VALUE=DATE");
    check(day == end.parameters().equals(";VALUE=DATE"), "DTSTART and DTEND of two kinds"); // 3.8.2.2
    Instant from = moment(start, zones);
    Instant to = moment(end, zones);
    check(to.isAfter(from), "an event that ends before it begins");
    String status = p.value("STATUS");
    check(Set.of("CONFIRMED", "CANCELLED", "TENTATIVE").contains(status), status); // 3.8.1.11
    check(Set.of("OPAQUE", "TRANSPARENT").contains(p.value("TRANSP")), "TRANSP");
    int sequence = Integer.parseInt(p.value("SEQUENCE"));
    check(sequence >= 0, "SEQUENCE"); // 3.8.7.4
    check(p.value("LAST-MODIFIED").endsWith("Z"), "LAST-MODIFIED is not in UTC");
    return new Event(
        p.value("UID"), plain(p.value("SUMMARY")), p.has("LOCATION") ? plain(p.value("LOCATION")) : "", p.has("DESCRIPTION") ? plain(p.value("DESCRIPTION")) : "",
        day, from, to, sequence, status, LocalDateTime.parse(stamp.substring(0, 15), LOCAL).toInstant(ZoneOffset.UTC));
  }

  /** 3.3.11 */
  private static String plain(String value) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      out.append(c != '\\' ? c : value.charAt(++i) == 'n' || value.charAt(i) == 'N' ? '\n' : value.charAt(i));
    }
    return out.toString();
  }

  /** 3.3.4, 3.3.5: a day, a time in UTC, or a time in a zone that the file must hold (3.2.19). */
  private static Instant moment(Line line, Map<String, Part> zones) {
    String value = line.value();
    if (line.parameters().equals(";VALUE=DATE")) {
      return LocalDate.parse(value, DateTimeFormatter.BASIC_ISO_DATE).atStartOfDay().toInstant(ZoneOffset.UTC);
    }
    if (value.endsWith("Z")) {
      check(line.parameters().isEmpty(), "UTC with a zone");
      return LocalDateTime.parse(value.substring(0, value.length() - 1), LOCAL).toInstant(ZoneOffset.UTC);
    }
    check(line.parameters().startsWith(";TZID="), "a time without a zone");
    Part zone = zones.get(line.parameters().substring(6));
    check(zone != null, "the file does not hold the zone " + line.parameters());
    LocalDateTime local = LocalDateTime.parse(value, LOCAL);
    // 3.6.5: the part with the latest onset before the time holds; onsets are local times of the offset before
    ZoneOffset offset = null;
    LocalDateTime latest = LocalDateTime.MIN;
    for (Part part : zone == null ? List.<Part>of() : zone.parts()) {
      check(Set.of("STANDARD", "DAYLIGHT").contains(part.name()), part.name());
      ZoneOffset before = ZoneOffset.of(part.value("TZOFFSETFROM"));
      ZoneOffset after = ZoneOffset.of(part.value("TZOFFSETTO"));
      LocalDateTime onset = LocalDateTime.parse(part.value("DTSTART"), LOCAL).plusSeconds(after.getTotalSeconds() - before.getTotalSeconds());
      if (!onset.isAfter(local) && onset.isAfter(latest)) {
        latest = onset;
        offset = after;
      }
    }
    if (offset == null) {
      throw new AssertionError("no part of the zone holds at " + local);
    }
    return local.toInstant(offset);
  }

  private static void check(boolean good, String what) {
    if (!good) {
      throw new AssertionError(what);
    }
  }
}
