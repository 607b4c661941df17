package boundwright.web.certificate;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.cert.CertPath;
import java.security.cert.CertPathValidator;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.security.cert.CertificateParsingException;
import java.security.cert.PKIXParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The certificate of this machine: read, renewed or made, whichever is needed. */
public final class OwnCertificate {
  /** How long a leaf holds; phones refuse long ones. */
  static final Duration LEAF_HOLDS = Duration.ofDays(180);
  /** A leaf that ends sooner is renewed. */
  static final Duration LEAF_LEFT = Duration.ofDays(30);
  /** How long the authority holds. */
  static final Duration AUTHORITY_HOLDS = Duration.ofDays(5 * 365);
  /** A phone's clock may be behind ours by so much. */
  static final Duration SLACK = Duration.ofDays(1);

  private static final Instant PROGRAM_MADE = Instant.parse("2026-01-01T00:00:00Z");
  private static final String AUTHORITY = "authority";
  private static final String LEAF = "leaf";
  private static final String ROOT = "root";

  private final Issuer.Trusted trusted;
  private final KeyFolder.Pair leaf;
  private final boolean anew;

  private OwnCertificate(Issuer.Trusted trusted, KeyFolder.Pair leaf, boolean anew) {
    this.trusted = trusted;
    this.leaf = leaf;
    this.anew = anew;
  }

  /**
   * The certificate for these names, at least one, and addresses. The authority stays as long as it covers them, so that phones need to trust it once.
   *
   * @throws RefusedException if the keys are damaged or others can read them, or if the clock is off
   */
  public static OwnCertificate of(Path keys, List<String> names, List<String> addresses, Clock clock) {
    Instant now = clock.instant();
    if (now.isBefore(PROGRAM_MADE)) {
      throw new RefusedException(
          "The clock of this machine says " + day(now) + ", which is before this program was made, so phones would refuse its certificate. Set the clock, then open boundwright again.");
    }
    KeyFolder folder = new KeyFolder(keys);
    folder.make();
    Optional<Issuer.Trusted> kept = folder.read(AUTHORITY).map(a -> new Issuer.Trusted(folder.readAlone(ROOT), a));
    kept.ifPresent(t -> refuseFuture(t.root(), now, keys));
    boolean stays = kept.isPresent() && endsAfter(kept.get().root(), now.plus(LEAF_HOLDS)) && covers(kept.get(), names, addresses, now);
    Issuer.Trusted trusted = stays ? kept.get() : new Issuer().authority(names, addresses, now.minus(SLACK), now.plus(AUTHORITY_HOLDS));
    Optional<KeyFolder.Pair> leaf = folder.read(LEAF);
    boolean leafStays =
        stays && leaf.isPresent() && endsAfter(leaf.get().certificate(), now.plus(LEAF_LEFT))
            && said(leaf.get().certificate()).equals(wanted(names, addresses)) && chain(trusted, leaf.get().certificate(), now);
    KeyFolder.Pair serving =
        leafStays ? leaf.get() : new Issuer().leaf(trusted.authority(), names, addresses, now.minus(SLACK), now.plus(LEAF_HOLDS));
    if (!stays) {
      folder.writeAlone(ROOT, trusted.root());
      folder.write(AUTHORITY, trusted.authority());
    }
    if (!leafStays) {
      folder.write(LEAF, serving);
    }
    return new OwnCertificate(trusted, serving, !stays && kept.isPresent());
  }

  private static void refuseFuture(X509Certificate certificate, Instant now, Path keys) {
    if (certificate.getNotBefore().toInstant().isAfter(now)) {
      throw new RefusedException(
          "The certificate in " + keys + " begins on " + day(certificate.getNotBefore().toInstant()) + ", but the clock of this machine says " + day(now)
              + ". Set the clock. If it was ahead when the certificate was made, remove the folder; phones must trust the new one then.");
    }
  }

  private static String day(Instant when) {
    return when.toString().substring(0, 10);
  }

  private static boolean endsAfter(X509Certificate certificate, Instant when) {
    return certificate.getNotAfter().toInstant().isAfter(when);
  }

  /** Whether a leaf for these would be believed: tried with the validator of the Java library, which knows the rules of names. */
  private static boolean covers(Issuer.Trusted trusted, List<String> names, List<String> addresses, Instant now) {
    return chain(trusted, new Issuer().leaf(trusted.authority(), names, addresses, now.minus(SLACK), now.plus(LEAF_LEFT)).certificate(), now);
  }

  private static boolean chain(Issuer.Trusted trusted, X509Certificate leaf, Instant now) {
    try {
      CertPath path = CertificateFactory.getInstance("X.509").generateCertPath(List.of(leaf, trusted.authority().certificate()));
      PKIXParameters asked = new PKIXParameters(Set.of(new TrustAnchor(trusted.root(), null)));
      asked.setRevocationEnabled(false);
      asked.setDate(Date.from(now));
      CertPathValidator.getInstance("PKIX").validate(path, asked);
      return true;
    } catch (GeneralSecurityException e) {
      return false;
    }
  }

  private static Set<String> wanted(List<String> names, List<String> addresses) {
    Set<String> out = new HashSet<>(names);
    out.addAll(addresses);
    return out;
  }

  private static Set<String> said(X509Certificate leaf) {
    try {
      Set<String> out = new HashSet<>();
      if (leaf.getSubjectAlternativeNames() != null) {
        for (List<?> one : leaf.getSubjectAlternativeNames()) {
          out.add(String.valueOf(one.get(1)));
        }
      }
      return out;
    } catch (CertificateParsingException e) {
      return Set.of();
    }
  }

  /** Whether an older authority no longer covers the names or nears its end, so that phones must trust this one anew. */
  public boolean anew() {
    return anew;
  }

  /** The certificate for phones to trust, in DER. */
  public byte[] authority() {
    try {
      return trusted.root().getEncoded();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  /** SHA-256 of that certificate, in pairs of digits, to compare by eye. */
  public String fingerprint() {
    try {
      return HexFormat.ofDelimiter(" ").withUpperCase().formatHex(MessageDigest.getInstance("SHA-256").digest(authority()));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Its last day. */
  public String until() {
    return day(trusted.root().getNotAfter().toInstant());
  }

  /** Key and chain for serving, kept in memory under an empty password. */
  public KeyStore serving() {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry(LEAF, leaf.key(), new char[0], new Certificate[] {leaf.certificate(), trusted.authority().certificate()});
      return store;
    } catch (GeneralSecurityException | IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
