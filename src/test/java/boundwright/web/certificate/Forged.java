package boundwright.web.certificate;

import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** What a thief of the authority's key would write. */
public final class Forged {
  private Forged() {}

  /** A leaf for any names, truly signed by the authority in this folder. */
  public static X509Certificate leaf(Path keys, List<String> names, List<String> addresses) {
    Instant now = Instant.now();
    KeyFolder.Pair authority = new KeyFolder(keys).read("authority").orElseThrow();
    return new Issuer().leaf(authority, names, addresses, now.minus(Duration.ofHours(1)), now.plus(Duration.ofDays(30))).certificate();
  }
}
