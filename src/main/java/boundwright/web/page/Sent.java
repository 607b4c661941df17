package boundwright.web.page;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A form as it was sent and refused, so that nothing that was written is gone; or an empty one.
 *
 * @param fields what was written, by field; of a repeated field see {@code lists}
 * @param lists what was written in repeated fields
 * @param refused why it was not taken, or empty
 */
public record Sent(Map<String, String> fields, Map<String, List<String>> lists, String refused) {
  /** A new form. */
  public static final Sent NOTHING = new Sent(Map.of(), Map.of(), "");

  /** The form of this request with the sentence that refused it. */
  public static Sent of(Context ctx, String refused) {
    Map<String, String> fields = new HashMap<>();
    Map<String, List<String>> lists = new HashMap<>();
    ctx.formParamMap()
        .forEach(
            (name, values) -> {
              fields.put(name, Form.holds(ctx, name, values.isEmpty() ? "" : values.get(0)));
              lists.put(name, List.copyOf(values));
            });
    return new Sent(Map.copyOf(fields), Map.copyOf(lists), refused);
  }

  /** What stands in a field: what was written, or else this. */
  public String field(String name, String otherwise) {
    return fields.getOrDefault(name, otherwise);
  }

  /** What stands in a field, empty if nothing was written. */
  public String field(String name) {
    return field(name, "");
  }

  /** What was written in a repeated field, counted from 0. */
  public String field(String name, int i) {
    List<String> all = lists.getOrDefault(name, List.of());
    return i < all.size() ? all.get(i) : "";
  }

  /** Whether it was sent and refused. */
  public boolean isRefused() {
    return !refused.isEmpty();
  }

  /** Whether any field of this beginning was written in. */
  public boolean wrote(String prefix) {
    return lists.entrySet().stream().anyMatch(e -> e.getKey().startsWith(prefix) && e.getValue().stream().anyMatch(v -> !v.isBlank()));
  }
}
