package boundwright.web.certificate;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;

/** What a thief of the authority's key would write. */
public final class Forged {
  private Forged() {}

  /** A leaf for any names, truly signed by the authority in this folder, and that authority. */
  public static List<X509Certificate> chain(Path keys, List<String> names, List<String> addresses) {
    Instant now = Instant.now();
    KeyFolder.Pair authority = new KeyFolder(keys).read("authority").orElseThrow();
    KeyFolder.Pair leaf = new Issuer().leaf(authority, names, addresses, now.minus(Duration.ofHours(1)), now.plus(Duration.ofDays(30)));
    return List.of(leaf.certificate(), authority.certificate());
  }

  /** A handshake with a server at this loopback address that shows such a leaf; throws what the client throws. */
  public static void handshake(Path keys, String address, SSLContext client) throws Exception {
    Instant now = Instant.now();
    KeyFolder.Pair authority = new KeyFolder(keys).read("authority").orElseThrow();
    KeyFolder.Pair leaf = new Issuer().leaf(authority, List.of("boundwright.local"), List.of(address), now.minus(Duration.ofHours(1)), now.plus(Duration.ofDays(30)));
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    store.setKeyEntry("leaf", leaf.key(), new char[0], new Certificate[] {leaf.certificate(), authority.certificate()});
    KeyManagerFactory held = KeyManagerFactory.getInstance("PKIX");
    held.init(store, new char[0]);
    SSLContext server = SSLContext.getInstance("TLS");
    server.init(held.getKeyManagers(), null, null);
    try (ServerSocket listening = server.getServerSocketFactory().createServerSocket(0, 1, InetAddress.getByName(address))) {
      Thread serving =
          new Thread(
              () -> {
                try (SSLSocket one = (SSLSocket) listening.accept()) {
                  one.startHandshake();
                } catch (IOException hungUp) {
                  // the client says why
                }
              });
      serving.setDaemon(true);
      serving.start();
      try (SSLSocket asking = (SSLSocket) client.getSocketFactory().createSocket(address, listening.getLocalPort())) {
        SSLParameters checks = asking.getSSLParameters();
        checks.setEndpointIdentificationAlgorithm("HTTPS");
        asking.setSSLParameters(checks);
        asking.startHandshake();
      }
    }
  }
}
