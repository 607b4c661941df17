package boundwright.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/** Writes answers as JSON. Names and units are those of {@code docs/formats-json.md}; nulls are written, not left out. */
public final class Json {
  private static final ObjectMapper MAPPER = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Json() {}

  /** Prints an answer. */
  public static void print(PrintWriter out, Object answer) {
    try {
      out.println(MAPPER.writeValueAsString(answer));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("An answer of boundwright could not be written as JSON", e);
    }
  }

  /** A length to the millimetre [m], so that no digit is shown that a tape cannot hold. */
  static double length(double metres) {
    return BigDecimal.valueOf(metres).setScale(3, RoundingMode.HALF_UP).doubleValue();
  }

  /** An aim or what it is worth, to a tenth of a millimetre [m]: aims are held against each other, not against a tape. */
  static double aim(double metres) {
    return BigDecimal.valueOf(metres).setScale(4, RoundingMode.HALF_UP).doubleValue();
  }

  /** As {@link #length(double)}; null stays null, and a footprint that was not seen is null. */
  static @Nullable Double lengthOrNull(@Nullable Double metres) {
    return metres == null || metres.isNaN() ? null : (Double) length(metres);
  }

  /** A chance to four digits, 0 to 1. */
  public static double chance(double chance) {
    return BigDecimal.valueOf(chance).setScale(4, RoundingMode.HALF_UP).doubleValue();
  }
}
