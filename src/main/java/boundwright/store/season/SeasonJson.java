package boundwright.store.season;

import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Text to JSON and back; a key that stands twice is refused. */
final class SeasonJson {
  /** Longest file that is read [bytes]; 120 athletes with a year of past days stay below it. */
  static final int MOST_BYTES = 20_000_000;

  private static final int FORMAT = 1;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private SeasonJson() {}

  static ObjectNode object() {
    return MAPPER.createObjectNode();
  }

  /** Lines that a coach can read and change. */
  static String lines(ObjectNode node) {
    try {
      return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a season could not be written", e);
    }
  }

  /** One line, for the database. */
  static String line(ObjectNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a season could not be written", e);
    }
  }

  /** The text of a file. */
  static String text(byte[] bytes) {
    if (bytes.length > MOST_BYTES) {
      throw new RefusedException(
          "The file has " + bytes.length / 1_000_000 + " MB; the limit is " + MOST_BYTES / 1_000_000 + " MB. Leave out past days of more than five weeks ago.");
    }
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new RefusedException("The file is not written in UTF-8. Save it as UTF-8 in the editor and try again.", e);
    }
  }

  /**
   * The whole of a file that says what it is.
   *
   * @param kind what must stand under {@code file}
   */
  static Place root(String text, String kind) {
    return root(tree(text), kind);
  }

  /** The same of what was read already. */
  static Place root(JsonNode tree, String kind) {
    Place root = Place.root(tree);
    String found = root.text("file", 60);
    if (!found.equals(kind)) {
      throw root.wrong("file", "'" + found + "' is not what is read here. It must be '" + kind + "'.");
    }
    int format = root.whole("format", 1, 1_000, FORMAT);
    if (format != FORMAT) {
      throw root.wrong("format", format + " was written by a newer boundwright; this program reads " + FORMAT + ". Use the newer one.");
    }
    return root;
  }

  /** The beginning of a file that says what it is. */
  static ObjectNode begin(String kind) {
    return object().put("file", kind).put("format", FORMAT);
  }

  /** An object that stands alone. */
  static Place object(String line) {
    return Place.root(tree(line));
  }

  private static JsonNode tree(String text) {
    if (text.isBlank()) {
      throw new RefusedException("The file is empty. Begin with the example: boundwright season example.");
    }
    try {
      return MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      String at = e.getLocation() == null ? "" : " at line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
      throw new RefusedException(
          "The file cannot be read as JSON" + at + ": " + firstLine(e.getOriginalMessage()) + ". Often a comma, a quotation mark or a bracket is missing just before.", e);
    }
  }

  private static String firstLine(String message) {
    String line = message.lines().findFirst().orElse("").replaceAll("\\p{Cntrl}", " ");
    return line.length() > 160 ? line.substring(0, 160) + "..." : line;
  }
}
