package boundwright.web.licences;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The licences that may ship, each with the reason. The form of the file stands at its head. */
public final class Accepted {
  private final Map<String, String> reasons = new LinkedHashMap<>();
  private final Map<String, String> corrections = new LinkedHashMap<>();

  private Accepted() {}

  /**
   * Reads the list.
   *
   * @throws IllegalArgumentException if a line has no reason
   */
  public static Accepted read(String text) {
    Accepted out = new Accepted();
    for (String line : text.lines().map(String::strip).filter(l -> !l.isEmpty() && !l.startsWith("#")).toList()) {
      int bar = line.indexOf(" | ");
      if (bar < 0 || line.substring(bar + 3).isBlank()) {
        throw new IllegalArgumentException("A licence is accepted without a reason: " + line);
      }
      String name = line.substring(0, bar).strip();
      int is = name.indexOf(" is ");
      if (is > 0) {
        out.corrections.put(name.substring(0, is), name.substring(is + 4));
      } else {
        out.reasons.put(name, line.substring(bar + 3).strip());
      }
    }
    return out;
  }

  /** The library with what the list corrects. */
  public Library corrected(Library library) {
    String licence = corrections.get(library.group() + ":" + library.name());
    return licence == null ? library : new Library(library.group(), library.name(), library.version(), List.of(licence));
  }

  /** The licences of a library that the list does not accept; what has none is not accepted. */
  public List<String> unknown(Library library) {
    if (library.licences().isEmpty()) {
      return List.of("no licence at all");
    }
    List<String> out = new ArrayList<>(library.licences());
    out.removeIf(l -> reasons.containsKey(l) || reasons.containsKey(l + " for " + library.group()));
    return out;
  }

  /** Every licence with the reason. */
  public Map<String, String> reasons() {
    return Map.copyOf(reasons);
  }

  /** The licences in the order of the list. */
  public List<String> names() {
    return List.copyOf(reasons.keySet());
  }
}
