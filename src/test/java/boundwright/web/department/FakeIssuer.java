package boundwright.web.department;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;

/** A server that describes itself as a department's and signs whatever a test wants: only for what a real one would never sign. */
final class FakeIssuer implements AutoCloseable {
  /** The key that it publishes. */
  static final RSAKey OWN = key("published");
  /** Another key under the same name. */
  static final RSAKey FORGED = key("published");

  private final HttpServer server;
  private final AtomicInteger asked = new AtomicInteger();
  private volatile String token = "";
  private volatile String saysItIs;
  private volatile String tokenEndpoint;

  FakeIssuer() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    saysItIs = at();
    tokenEndpoint = at() + "/token";
    answer("/.well-known/openid-configuration", this::described);
    answer("/keys", () -> new JWKSet(OWN.toPublicJWK()).toString());
    answer("/token", () -> "{\"access_token\":\"a\",\"token_type\":\"Bearer\",\"id_token\":\"" + token + "\"}");
    server.start();
  }

  private static RSAKey key(String name) {
    try {
      return new RSAKeyGenerator(2048).keyID(name).generate();
    } catch (JOSEException e) {
      throw new AssertionError(e);
    }
  }

  private interface Said {
    String text();
  }

  private void answer(String path, Said said) {
    server.createContext(
        path,
        exchange -> {
          asked.incrementAndGet();
          byte[] body = said.text().getBytes(StandardCharsets.UTF_8);
          exchange.getResponseHeaders().set("Content-Type", "application/json");
          exchange.sendResponseHeaders(200, body.length);
          try (OutputStream out = exchange.getResponseBody()) {
            out.write(body);
          }
        });
  }

  private String described() {
    return "{\"issuer\":\"" + saysItIs + "\",\"authorization_endpoint\":\"" + at() + "/log-in\",\"token_endpoint\":\"" + tokenEndpoint
        + "\",\"jwks_uri\":\"" + at() + "/keys\",\"response_types_supported\":[\"code\"],\"subject_types_supported\":[\"public\"]"
        + ",\"id_token_signing_alg_values_supported\":[\"RS256\",\"HS256\",\"none\"],\"authorization_response_iss_parameter_supported\":true}";
  }

  /** Where it is. */
  String at() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  /** How often it was asked anything. */
  int asked() {
    return asked.get();
  }

  /** Says from now on that it is another. */
  void saysItIs(String issuer) {
    saysItIs = issuer;
  }

  /** Says from now on that codes are taken back there. */
  void takesCodesAt(String address) {
    tokenEndpoint = address;
  }

  /** Gives this to whoever brings a code next. */
  void gives(String compact) {
    token = compact;
  }

  /** A signed token. */
  static String signed(RSAKey key, JWTClaimsSet claims) throws JOSEException {
    SignedJWT jwt = new SignedJWT(new JWSHeader.Builder(JWSAlgorithm.RS256).keyID(key.getKeyID()).build(), claims);
    jwt.sign(new RSASSASigner(key));
    return jwt.serialize();
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
