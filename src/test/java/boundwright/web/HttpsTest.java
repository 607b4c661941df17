package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.pairing.PhoneRights;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.certificate.Forged;
import boundwright.web.certificate.OwnCertificate;
import java.io.ByteArrayInputStream;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.security.cert.CertPath;
import java.security.cert.CertPathValidator;
import java.security.cert.CertPathValidatorException;
import java.security.cert.CertificateFactory;
import java.security.cert.PKIXParameters;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLHandshakeException;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The certificate against the Java library's own TLS client and path validator (reference library; RFC 5280 and RFC 6125 as it reads them).
 * The clock is the machine's own where a real handshake is made, because the client reads no other.
 */
class HttpsTest {
  private static final Clock NOW = Clock.systemUTC();
  private static final List<String> NAMES = List.of("boundwright.local");
  private static final List<String> ADDRESSES = List.of("192.0.2.17");

  @TempDir Path folder;

  private static X509Certificate read(byte[] der) throws Exception {
    return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(der));
  }

  /** A client that trusts this authority and no other. */
  private static HttpClient trusting(byte[] authority) throws Exception {
    return HttpClient.newBuilder().sslContext(trustingOnly(authority)).cookieHandler(new CookieManager()).followRedirects(HttpClient.Redirect.NORMAL).build();
  }

  private static SSLContext trustingOnly(byte[] authority) throws Exception {
    KeyStore only = KeyStore.getInstance("PKCS12");
    only.load(null, null);
    only.setCertificateEntry("only", read(authority));
    TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
    trust.init(only);
    SSLContext tls = SSLContext.getInstance("TLS");
    tls.init(null, trust.getTrustManagers(), null);
    return tls;
  }

  private static HttpResponse<String> get(HttpClient who, String url) throws Exception {
    return who.send(HttpRequest.newBuilder(URI.create(url)).build(), HttpResponse.BodyHandlers.ofString());
  }

  private static HttpResponse<String> post(HttpClient who, String url, String body) throws Exception {
    return who.send(
        HttpRequest.newBuilder(URI.create(url)).header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(body)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void aPhoneLearnsToTrustPairsAndReadsOverTls() throws Exception {
    String address = Network.address();
    try (Workbench bench = Workbench.open(folder, NOW);
        WebServer server = WebServer.start(bench, new Opening("all", 0, true, "", folder.resolve("keys"), "", null))) {
      String open = "http://" + address + ":" + server.port();
      String sealed = server.reach().urls().stream().filter(u -> u.contains("/" + address + ":")).findFirst().orElseThrow();
      HttpClient plain = HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NORMAL).build();
      HttpResponse<String> page = get(plain, open + "/");
      assertThat(page.uri().getPath()).as("plain http leads to how to trust").isEqualTo("/trust");
      String code = server.pairing().offer(PhoneRights.LOG).text();
      assertThat(get(plain, open + "/pair/" + code).uri().getPath()).isEqualTo("/trust");
      assertThat(post(plain, open + "/pair/" + code, "name=x").statusCode()).isEqualTo(403);

      byte[] authority =
          plain.send(HttpRequest.newBuilder(URI.create(open + "/trust/authority.crt")).build(), HttpResponse.BodyHandlers.ofByteArray()).body();
      String fingerprint = HexFormat.ofDelimiter(" ").withUpperCase().formatHex(MessageDigest.getInstance("SHA-256").digest(authority));
      assertThat(page.body()).contains(fingerprint);
      assertThat(get(HttpClient.newHttpClient(), "http://127.0.0.1:" + server.port() + "/trust").body()).contains(fingerprint);

      HttpClient phone = trusting(authority);
      HttpResponse<String> stranger = get(phone, sealed + "/");
      assertThat(stranger.statusCode()).isEqualTo(401);
      assertThat(stranger.headers().firstValue("Strict-Transport-Security")).isEmpty();
      String csrf = Client.hidden(get(phone, sealed + "/pair/" + code).body(), "csrf");
      HttpResponse<String> in = post(phone, sealed + "/pair/" + code, "name=Mara&csrf=" + csrf);
      assertThat(in.statusCode()).isEqualTo(200);
      String set = in.previousResponse().orElseThrow().headers().firstValue("Set-Cookie").orElseThrow();
      assertThat(set).startsWith("__Host-boundwright_phone=").contains("Secure").contains("HttpOnly").contains("SameSite=Strict");
      assertThat(get(phone, sealed + "/tapes").statusCode()).isEqualTo(200);
      assertThat(bench.phones().all().get(0).sealed()).isTrue();

      assertThatThrownBy(() -> get(HttpClient.newHttpClient(), sealed + "/")).as("whoever does not trust it").isInstanceOf(SSLHandshakeException.class);
    }
  }

  @Test
  void whatWasPairedInTheOpenIsNotLetInWhereItIsSealed() throws Exception {
    String address = Network.address();
    try (Workbench bench = Workbench.open(folder, NOW)) {
      boundwright.pairing.Pairing pairing = new boundwright.pairing.Pairing(bench.phones(), NOW, new java.security.SecureRandom());
      String heard = pairing.pair(pairing.offer(PhoneRights.ALL).text(), "Heard by others", false).orElseThrow().secret();
      try (WebServer server = WebServer.start(bench, new Opening("all", 0, true, "", folder.resolve("keys"), "", null))) {
        byte[] authority =
            HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + "/trust/authority.crt")).build(), HttpResponse.BodyHandlers.ofByteArray())
                .body();
        String sealed = server.reach().urls().stream().filter(u -> u.contains("/" + address + ":")).findFirst().orElseThrow();
        HttpResponse<String> answer =
            trusting(authority)
                .send(
                    HttpRequest.newBuilder(URI.create(sealed + "/")).header("Cookie", "__Host-boundwright_phone=" + heard).build(),
                    HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(401);
      }
    }
  }

  /** As a phone does that trusts the root: the server sends leaf and authority. */
  private static void validate(byte[] root, List<X509Certificate> sent) throws Exception {
    KeyStore only = KeyStore.getInstance("PKCS12");
    only.load(null, null);
    only.setCertificateEntry("only", read(root));
    PKIXParameters asked = new PKIXParameters(only);
    asked.setRevocationEnabled(false);
    CertPath path = CertificateFactory.getInstance("X.509").generateCertPath(sent);
    CertPathValidator.getInstance("PKIX").validate(path, asked);
  }

  @Test
  void theAuthorityCanVouchForItsNamesAndForNothingElse() throws Exception {
    OwnCertificate own = OwnCertificate.of(folder.resolve("keys"), NAMES, ADDRESSES, NOW);
    byte[] authority = own.authority();
    validate(authority, Forged.chain(folder.resolve("keys"), List.of("boundwright.local"), List.of("192.0.2.17")));
    for (String name : List.of("bank.example", "local", "xboundwright.local", "evil.local")) {
      List<X509Certificate> forged = Forged.chain(folder.resolve("keys"), List.of(name), List.of());
      assertThatThrownBy(() -> validate(authority, forged)).as(name).isInstanceOf(CertPathValidatorException.class);
    }
    for (String address : List.of("192.0.2.18", "203.0.113.1", "2001:db8::1")) {
      List<X509Certificate> forged = Forged.chain(folder.resolve("keys"), List.of("boundwright.local"), List.of(address));
      assertThatThrownBy(() -> validate(authority, forged)).as(address).isInstanceOf(CertPathValidatorException.class);
    }
    X509Certificate root = read(authority);
    assertThat(root.getCriticalExtensionOIDs()).as("RFC 5280, 4.2.1.10: name constraints are critical").contains("2.5.29.30");
    assertThat(root.getBasicConstraints()).as("one authority below it, whose key is kept").isEqualTo(1);
    assertThat(folder.resolve("keys/root.key")).as("the root's own key is gone").doesNotExist();
    List<X509Certificate> served = Forged.chain(folder.resolve("keys"), List.of("boundwright.local"), List.of());
    assertThat(served.get(1).getBasicConstraints()).isZero();
    assertThat(served.get(1).getCriticalExtensionOIDs()).contains("2.5.29.30");
  }

  @Test
  void whoeverStealsTheKeysCannotPassForAnotherInAHandshake() throws Exception {
    Path keys = folder.resolve("keys");
    OwnCertificate own = OwnCertificate.of(keys, List.of("boundwright.local"), List.of("192.0.2.17"), NOW);
    // 127.0.0.1 was never told: a server with a leaf for it, truly signed by the stolen authority
    assertThatThrownBy(() -> Forged.handshake(keys, "127.0.0.1", trustingOnly(own.authority())))
        .isInstanceOf(SSLHandshakeException.class).hasMessageContaining("PKIX");
  }

  @Test
  void theAuthorityStaysAndTheLeafIsRenewed() throws Exception {
    Path keys = folder.resolve("keys");
    Instant start = Instant.parse("2026-05-12T09:00:00Z");
    OwnCertificate first = at(keys, ADDRESSES, start);
    byte[] leaf = leaf(first);
    OwnCertificate second = at(keys, ADDRESSES, start.plus(Duration.ofDays(149)));
    assertThat(second.authority()).as("phones trust once").isEqualTo(first.authority());
    assertThat(leaf(second)).isEqualTo(leaf);
    OwnCertificate renewed = at(keys, ADDRESSES, start.plus(Duration.ofDays(151)));
    assertThat(renewed.authority()).isEqualTo(first.authority());
    assertThat(leaf(renewed)).isNotEqualTo(leaf);
    assertThat(renewed.anew()).isFalse();
    OwnCertificate moved = at(keys, List.of("198.51.100.4"), start.plus(Duration.ofDays(152)));
    assertThat(moved.authority()).isNotEqualTo(first.authority());
    assertThat(moved.anew()).isTrue();
    OwnCertificate fewer = at(keys, List.of(), start.plus(Duration.ofDays(153)));
    assertThat(fewer.authority()).as("what it covers it still covers").isEqualTo(moved.authority());
    assertThat(at(keys, List.of("198.51.100.4"), start.plus(Duration.ofDays(6 * 365))).anew()).as("five years on").isTrue();
  }

  private static OwnCertificate at(Path keys, List<String> addresses, Instant when) {
    return OwnCertificate.of(keys, NAMES, addresses, Clock.fixed(when, ZoneOffset.UTC));
  }

  private static byte[] leaf(OwnCertificate own) throws Exception {
    return own.serving().getCertificate("leaf").getEncoded();
  }

  @Test
  void keysThatOthersCanReadAndDamagedFilesAreRefusedInWords() throws Exception {
    Path keys = folder.resolve("keys");
    Instant start = Instant.parse("2026-05-12T09:00:00Z");
    at(keys, ADDRESSES, start);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(keys))).isEqualTo("rwx------");
    for (String file : List.of("authority.key", "leaf.key")) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(keys.resolve(file)))).isEqualTo("rw-------");
    }
    Path key = keys.resolve("authority.key");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r-----"));
    refused(keys, start, "Others on this machine can read", "chmod 600");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
    Files.setPosixFilePermissions(keys, PosixFilePermissions.fromString("rwxr-xr-x"));
    refused(keys, start, "chmod 700", keys.toString());
    Files.setPosixFilePermissions(keys, PosixFilePermissions.fromString("rwx------"));
    at(keys, ADDRESSES, start);

    byte[] whole = Files.readAllBytes(key);
    for (byte[] bad : List.of(new byte[0], "rubbish".getBytes(StandardCharsets.US_ASCII), java.util.Arrays.copyOf(whole, whole.length / 2), Files.readAllBytes(keys.resolve("leaf.key")))) {
      Files.write(key, bad);
      refused(keys, start, "damaged or do not belong together", "remove the folder");
    }
    Files.delete(key);
    refused(keys, start, "damaged", "remove the folder");
  }

  @Test
  void aClockThatIsOffIsSaid() {
    Path keys = folder.resolve("keys");
    refused(keys, Instant.parse("1970-01-01T00:00:10Z"), "The clock of this machine says 1970-01-01", "Set the clock");
    at(keys, ADDRESSES, Instant.parse("2027-05-12T09:00:00Z"));
    refused(keys, Instant.parse("2026-05-12T09:00:00Z"), "begins on 2027-05-11", "Set the clock");
  }

  private static void refused(Path keys, Instant when, String... words) {
    assertThatThrownBy(() -> at(keys, ADDRESSES, when)).isInstanceOf(RefusedException.class).hasMessageContainingAll(words);
  }
}
