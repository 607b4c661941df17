package boundwright.phone;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One line of text with named values, {@code key=value&key=value}. Everything but letters, digits and {@code - . _ ~ , : @ |} is written as
 * per cent and two hexadecimal digits of its UTF-8 bytes, so that a line never holds a line break.
 */
final class Fields {
  private static final String PLAIN = "-._~,:@|";
  private static final boolean[] IS_PLAIN = plain();
  private static final String HEX = "0123456789ABCDEF";

  private final Map<String, String> values = new LinkedHashMap<>();
  private final String what;

  /** An empty line; {@code what} names it in a refusal: {@code entry}, {@code page}. */
  Fields(String what) {
    this.what = what;
  }

  /** Adds a value; null is left out. */
  Fields put(String key, @Nullable Object value) {
    if (value != null) {
      values.put(key, value instanceof Double d ? number(d) : String.valueOf(value));
    }
    return this;
  }

  /** A double so that it is read back to the last bit. */
  static String number(double x) {
    return Double.toString(x);
  }

  /**
   * Reads a line.
   *
   * @throws RefusedException if it is not one
   */
  static Fields read(String what, String line) {
    Fields out = new Fields(what);
    for (String pair : line.strip().split("&", -1)) {
      int at = pair.indexOf('=');
      if (at < 1) {
        throw out.broken("'" + shortened(pair) + "' is no value with a name");
      }
      String key = decoded(out, pair.substring(0, at));
      if (out.values.put(key, decoded(out, pair.substring(at + 1))) != null) {
        throw out.broken("'" + key + "' stands in it twice");
      }
    }
    return out;
  }

  /** The line. */
  String line() {
    StringBuilder out = new StringBuilder();
    values.forEach((k, v) -> out.append(out.isEmpty() ? "" : "&").append(encoded(k)).append('=').append(encoded(v)));
    return out.toString();
  }

  /** Whether a value of this name is there. */
  boolean has(String key) {
    return values.containsKey(key);
  }

  /** A value that must be there. */
  String text(String key) {
    String v = values.get(key);
    if (v == null) {
      throw broken("'" + key + "' is missing");
    }
    return v;
  }

  /** A value, or empty. */
  String textOr(String key, String otherwise) {
    return values.getOrDefault(key, otherwise);
  }

  /** A whole number in a range. */
  long whole(String key, long least, long most) {
    String t = text(key);
    if (!t.matches("-?\\d{1,18}")) {
      throw broken("'" + key + "' is no whole number: '" + shortened(t) + "'");
    }
    long n = Long.parseLong(t);
    if (n < least || n > most) {
      throw broken("'" + key + "' is " + n + ", out of range: " + least + " to " + most);
    }
    return n;
  }

  /** A number that must be there and finite. */
  double real(String key) {
    return real(key, text(key));
  }

  /** A number, or null where none is there. */
  @Nullable Double realOrNull(String key) {
    return has(key) ? (Double) real(key) : null;
  }

  private double real(String key, String t) {
    if (!t.matches("-?\\d{1,17}(\\.\\d{1,20})?([eE]-?\\d{1,3})?")) {
      throw broken("'" + key + "' is no number: '" + shortened(t) + "'");
    }
    double x = Double.parseDouble(t);
    if (Double.isNaN(x) || Double.isInfinite(x)) {
      throw broken("'" + key + "' is no number: '" + shortened(t) + "'");
    }
    return x;
  }

  /** Numbers with commas between them; {@code -} is one that nobody knows, NaN. Empty gives none. */
  List<Double> reals(String key) {
    List<Double> out = new ArrayList<>();
    for (String t : words(key)) {
      out.add(t.equals("-") ? Double.NaN : real(key, t));
    }
    return out;
  }

  /** As {@link #reals} reads them. */
  static @Nullable String reals(List<Double> numbers) {
    if (numbers.isEmpty()) {
      return null;
    }
    List<String> out = new ArrayList<>();
    numbers.forEach(x -> out.add(x.isNaN() ? "-" : number(x)));
    return String.join(",", out);
  }

  /** Words with commas between them; empty gives none. */
  List<String> words(String key) {
    String t = textOr(key, "");
    return t.isEmpty() ? List.of() : List.of(t.split(",", -1));
  }

  /** {@code yes} or {@code no}. */
  boolean yes(String key) {
    String t = text(key);
    if (!t.equals("yes") && !t.equals("no")) {
      throw broken("'" + key + "' is neither yes nor no: '" + shortened(t) + "'");
    }
    return t.equals("yes");
  }

  /** One of the names of a kind. */
  <E extends Enum<E>> E one(String key, E[] all) {
    String t = text(key);
    for (E e : all) {
      if (e.name().equals(t)) {
        return e;
      }
    }
    throw broken("'" + key + "' is '" + shortened(t) + "', which this program does not know");
  }

  /** What to throw when the line makes no sense. */
  RefusedException broken(String why) {
    return new RefusedException("This " + what + " cannot be read: " + why + ". Nothing was taken from it; load the page again where there is a connection.");
  }

  private static String shortened(String t) {
    return t.length() <= 40 ? t : t.substring(0, 40) + "...";
  }

  private static boolean[] plain() {
    boolean[] out = new boolean[128];
    for (char c = 0; c < out.length; c++) {
      out[c] = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || PLAIN.indexOf(c) >= 0;
    }
    return out;
  }

  private static boolean isPlain(char c) {
    return c < 128 && IS_PLAIN[c];
  }

  private static String encoded(String text) {
    int same = 0;
    while (same < text.length() && isPlain(text.charAt(same))) {
      same++;
    }
    if (same == text.length()) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 8);
    out.append(text, 0, same);
    for (int i = same; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isPlain(c)) {
        out.append(c);
      } else {
        int point = text.codePointAt(i);
        i += point > 0xffff ? 1 : 0;
        utf8(out, point >= 0xd800 && point <= 0xdfff ? 0xfffd : point);
      }
    }
    return out.toString();
  }

  /** By hand, as a browser writes it: the library's coders would bring more into the browser than all of this room. */
  private static void utf8(StringBuilder out, int point) {
    if (point < 0x80) {
      hex(out, point);
    } else if (point < 0x800) {
      hex(out, 0xc0 | (point >> 6));
      hex(out, 0x80 | (point & 63));
    } else if (point < 0x10000) {
      hex(out, 0xe0 | (point >> 12));
      hex(out, 0x80 | ((point >> 6) & 63));
      hex(out, 0x80 | (point & 63));
    } else {
      hex(out, 0xf0 | (point >> 18));
      hex(out, 0x80 | ((point >> 12) & 63));
      hex(out, 0x80 | ((point >> 6) & 63));
      hex(out, 0x80 | (point & 63));
    }
  }

  private static void hex(StringBuilder out, int octet) {
    out.append('%').append(HEX.charAt(octet >> 4)).append(HEX.charAt(octet & 15));
  }

  private static String decoded(Fields in, String text) {
    StringBuilder out = new StringBuilder(text.length());
    int at = 0;
    while (at < text.length()) {
      int first = octet(in, text, at);
      at += text.charAt(at) == '%' ? 3 : 1;
      int more = first < 0x80 ? 0 : first < 0xc2 || first > 0xf4 ? -1 : first < 0xe0 ? 1 : first < 0xf0 ? 2 : 3;
      int point = more <= 0 ? first : first & (0x3f >> more);
      for (int k = 0; k < more; k++) {
        int next = at < text.length() ? octet(in, text, at) : 0;
        at += 3;
        more = (next & 0xc0) == 0x80 ? more : -1;
        point = (point << 6) | (next & 63);
      }
      boolean tooLong = (more == 2 && point < 0x800) || (more == 3 && point < 0x10000);
      if (more < 0 || tooLong || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) {
        throw in.broken("'" + shortened(text) + "' is no text");
      }
      out.append(Character.toChars(point));
    }
    return out.toString();
  }

  /** The byte that stands at a place, one sign or three. */
  private static int octet(Fields in, String text, int at) {
    char c = text.charAt(at);
    if (c != '%') {
      if (c >= 0x80) {
        throw in.broken("'" + shortened(text) + "' has a sign that should be written with %");
      }
      return c;
    }
    int high = at + 2 < text.length() ? Character.digit(text.charAt(at + 1), 16) : -1;
    int low = at + 2 < text.length() ? Character.digit(text.charAt(at + 2), 16) : -1;
    if (high < 0 || low < 0) {
      throw in.broken("'" + shortened(text) + "' has a % without two digits");
    }
    return high * 16 + low;
  }
}
