package boundwright.web.page;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What became of the forms of a page: what was written in a refused one, and what was just done.
 *
 * @param form which form was refused, or empty
 * @param fields what was written in it
 * @param refused why
 * @param said what was just done, or empty
 */
public record Written(String form, Map<String, List<String>> fields, String refused, String said) {
  /** Nothing was refused. */
  public static Written said(String said) {
    return new Written("", Map.of(), "", said);
  }

  /** This form was refused; what was written in it is kept. */
  public static Written refused(Context ctx, String form, String why) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    ctx.formParamMap().forEach((name, values) -> fields.put(name, List.copyOf(values)));
    return new Written(form, fields, why, "");
  }

  /** What stands in a field: what was written, or what is kept. */
  public String field(String ofForm, String name, String kept) {
    List<String> values = form.equals(ofForm) ? fields.getOrDefault(name, List.of()) : List.of();
    return values.isEmpty() ? kept : values.get(0);
  }

  /** Everything written in a field that may be sent more than once. */
  public List<String> all(String ofForm, String name) {
    return form.equals(ofForm) ? fields.getOrDefault(name, List.of()) : List.of();
  }

  /** The sentence beside a form, or empty. */
  public String refusal(String ofForm) {
    return form.equals(ofForm) ? refused : "";
  }

  /** Whether this form was refused. */
  public boolean isRefused(String ofForm) {
    return form.equals(ofForm);
  }

  /** HTTP status of the page. */
  public int status() {
    return form.isEmpty() ? 200 : 422;
  }
}
