package boundwright.web.page;

import io.javalin.http.Context;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BinaryOperator;

/**
 * A form that is saved as a whole, by two people at once. It carries what it was made from in the field {@value #WAS}; what only one
 * of them changed holds, and a field that both changed differently is asked, with both values shown. A form without {@value #WAS} is
 * taken as it is.
 *
 * @param fields what holds, by field
 * @param theirs fields that somebody else alone changed since the form was made
 * @param both fields that both changed, each to something else
 */
public record TwoHands(Map<String, String> fields, List<String> theirs, List<String> both) {
  /** The field that carries what the form was made from. */
  public static final String WAS = "was";

  /** Takes copies. */
  public TwoHands {
    fields = Map.copyOf(fields);
    theirs = List.copyOf(theirs);
    both = List.copyOf(both);
  }

  /** What the field {@value #WAS} of a form holds that shows these. */
  public static String was(Map<String, String> shown) {
    List<String> out = new ArrayList<>();
    shown.forEach((name, value) -> out.add(enc(name) + "=" + enc(value)));
    return String.join("&", out);
  }

  /**
   * Merges the form that was sent with what is kept now, and lets {@link Form#text} answer what holds.
   *
   * @param now the same fields as they are kept, written as the form would show them
   */
  public static TwoHands merge(Context ctx, Map<String, String> now) {
    Map<String, String> was = read(Form.text(ctx, WAS));
    Map<String, String> sent = new LinkedHashMap<>();
    now.keySet().forEach(name -> sent.put(name, Form.text(ctx, name)));
    TwoHands merged = merge(was, sent, now);
    merged.fields.forEach((name, value) -> Form.put(ctx, name, value));
    return merged;
  }

  static TwoHands merge(Map<String, String> was, Map<String, String> sent, Map<String, String> now) {
    Map<String, String> fields = new LinkedHashMap<>();
    List<String> theirs = new ArrayList<>();
    List<String> both = new ArrayList<>();
    sent.forEach(
        (name, mine) -> {
          String stands = now.getOrDefault(name, "");
          String before = was.getOrDefault(name, stands);
          boolean changedThere = !stands.equals(before);
          boolean changedHere = !mine.equals(before);
          if (changedThere && !changedHere) {
            theirs.add(name);
          } else if (changedThere && !mine.equals(stands)) {
            both.add(name);
          }
          fields.put(name, changedThere && !changedHere ? stands : mine);
        });
    return new TwoHands(fields, theirs, both);
  }

  /**
   * What is asked about the fields that both changed.
   *
   * @param now what is kept
   * @param called a field and its value, as the coach reads them: {@code level advanced}
   */
  public String asked(Map<String, String> now, BinaryOperator<String> called) {
    List<String> out = new ArrayList<>();
    for (String name : both) {
      out.add(
          "Kept meanwhile by somebody else: " + called.apply(name, now.getOrDefault(name, "")) + ". You wrote: "
              + called.apply(name, fields.getOrDefault(name, "")) + ".");
    }
    return String.join("\n", out) + "\nNothing of yours was kept yet. What stands in the form holds when you save again.";
  }

  private static Map<String, String> read(String was) {
    Map<String, String> out = new LinkedHashMap<>();
    for (String pair : was.split("&", -1)) {
      int at = pair.indexOf('=');
      if (at > 0) {
        out.put(dec(pair.substring(0, at)), dec(pair.substring(at + 1)));
      }
    }
    return out;
  }

  private static String enc(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String dec(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      // not written by our form: no field has such a value
      return "";
    }
  }
}
