package boundwright.store;

import java.text.Normalizer;
import java.util.Locale;

/** A name as it is compared: one spelling of accents, spaces evened, case folded (the engine itself folds only a to z). */
public final class NameKey {
  private NameKey() {}

  /** The key of a name. */
  public static String of(String name) {
    String tidy = Normalizer.normalize(name.strip().replaceAll("\\s+", " "), Normalizer.Form.NFC);
    return tidy.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }
}
