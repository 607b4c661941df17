package boundwright.web.licences;

import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What ships: the bill of materials (CycloneDX 1.6) that the build put into the program, with the notice and the accepted licences. */
public final class Shipped {
  private Shipped() {}

  /**
   * Every library, by group and name.
   *
   * @throws RefusedException if this build has no bill of materials
   */
  public static List<Library> libraries() {
    Accepted accepted = accepted();
    List<Library> out = new ArrayList<>();
    try {
      for (JsonNode c : new ObjectMapper().readTree(text("sbom.json")).path("components")) {
        Library library = new Library(c.path("group").asText(), c.path("name").asText(), c.path("version").asText(), licences(c));
        if (!out.contains(library)) {
          out.add(library);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.sort(Comparator.comparing(Library::group).thenComparing(Library::name));
    return out.stream().map(accepted::corrected).distinct().toList();
  }

  private static List<String> licences(JsonNode component) {
    List<String> out = new ArrayList<>();
    for (JsonNode l : component.path("licenses")) {
      JsonNode one = l.path("license");
      out.add(l.has("expression") ? l.path("expression").asText() : one.path(one.has("id") ? "id" : "name").asText());
    }
    return out;
  }

  /** The licences that may ship. */
  public static Accepted accepted() {
    return Accepted.read(text("accepted.txt"));
  }

  /** The notice that goes along with the program. */
  public static String notice() {
    return text("NOTICE");
  }

  /** All of it as one text: the notice, the libraries, the licences with how their terms are kept. */
  public static String text() {
    StringBuilder out = new StringBuilder(notice()).append("\nLibraries\n");
    for (Library l : libraries()) {
      out.append(l.group()).append(':').append(l.name()).append(' ').append(l.version()).append("  ").append(String.join(" or ", l.licences())).append('\n');
    }
    out.append("\nLicences, and how their terms are kept\n");
    Accepted accepted = accepted();
    accepted.names().forEach(n -> out.append(n).append(": ").append(accepted.reasons().get(n)).append('\n'));
    return out.toString();
  }

  private static String text(String file) {
    try (InputStream in = Shipped.class.getResourceAsStream("/licences/" + file)) {
      if (in == null) {
        throw new RefusedException("This build was made without its list of libraries. Build it with Maven: ./boundwright does it.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
