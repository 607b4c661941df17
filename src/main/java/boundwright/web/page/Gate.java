package boundwright.web.page;

import boundwright.clip.desk.ClipDesk;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import jakarta.servlet.MultipartConfigElement;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The one door that every request passes. Refuses a Host that is not ours (a rebound DNS name could otherwise read the
 * squad from any web page), a write that another site sent, a write without this browser's own token, and a body that is
 * too large. Sets the headers that keep foreign scripts, styles and frames out.
 */
public final class Gate {
  /** Largest form that is taken, in bytes. */
  public static final long MOST_FORM_BYTES = 200_000;
  /** Largest file that is taken, in bytes. */
  public static final long MOST_FILE_BYTES = 32_000_000;

  /** Where films are sent. */
  public static final String FILMS = "/clips";
  /** Largest lot of films that is taken at once, in bytes (judgement: a session of a squad, filmed rep by rep). */
  public static final long MOST_FILMS_BYTES = 4 * ClipDesk.MAX_FILM_BYTES;
  /** What of a film is kept in memory while it arrives, in bytes; the rest goes to disk at once. */
  private static final int IN_MEMORY_BYTES = 1 << 16;
  private static final String PARTS = "org.eclipse.jetty.multipartConfig";

  /** Largest body that is read to its end only to be refused in words, in bytes. */
  private static final long MOST_PASSED_OVER_BYTES = 256_000_000;

  private static final String COOKIE = "boundwright_form";
  private static final String FIELD = "csrf";
  private static final String HEADER = "X-Boundwright-Form";
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final Set<String> READS = Set.of("GET", "HEAD");
  private static final String CONTENT_POLICY =
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'";

  private final String boundHost;
  private final RandomGenerator random;

  /**
   * @param boundHost the host that the server listens on
   * @param random a generator that cannot be guessed
   */
  public Gate(String boundHost, RandomGenerator random) {
    this.boundHost = boundHost.toLowerCase(Locale.ROOT);
    this.random = random;
  }

  /** Lets the request pass or throws {@link Turned}. */
  public void check(Context ctx) {
    headers(ctx);
    checkHost(ctx);
    if (isWrite(ctx)) {
      checkSize(ctx);
      checkOrigin(ctx);
      checkToken(ctx);
    }
  }

  /** This browser's form token, made and sent as a cookie when it has none yet. */
  public String token(Context ctx) {
    String made = ctx.attribute(COOKIE);
    if (made != null) {
      return made;
    }
    String held = cookie(ctx);
    String token = held == null ? fresh() : held;
    if (held == null) {
      Cookie cookie = new Cookie(COOKIE, token);
      cookie.setHttpOnly(true);
      cookie.setSameSite(SameSite.STRICT);
      ctx.cookie(cookie);
    }
    ctx.attribute(COOKIE, token);
    return token;
  }

  /** A text that is used once and cannot be guessed: 32 hexadecimal digits. */
  public String fresh() {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private static void headers(Context ctx) {
    ctx.header("Content-Security-Policy", CONTENT_POLICY);
    ctx.header("X-Content-Type-Options", "nosniff");
    // not no-referrer: browsers would then send "Origin: null" with our own forms
    ctx.header("Referrer-Policy", "same-origin");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Cache-Control", "no-store");
  }

  private static boolean isWrite(Context ctx) {
    return !READS.contains(ctx.req().getMethod()) || !READS.contains(ctx.method().name());
  }

  private void checkHost(Context ctx) {
    String host = ctx.header("Host");
    String name = host == null ? "" : host.toLowerCase(Locale.ROOT).replaceFirst(":\\d{1,5}$", "");
    String bare = name.replaceAll("[\\[\\]]", "");
    boolean ours = LOOPBACK.contains(name) || (!bare.isEmpty() && bare.equals(boundHost)) || isLocalAddress(ctx, bare);
    if (!ours) {
      throw new Turned(
          421,
          "This address is not one of boundwright's. Open it as http://127.0.0.1:" + ctx.port()
              + " on this machine, or by the address given with --host.");
    }
  }

  /** Listening on every address, the one by which the request came in is ours too; numbers only, never a name. */
  private boolean isLocalAddress(Context ctx, String host) {
    if (!host.matches("[0-9.]+|[0-9a-f:.]*:[0-9a-f:.]*")) {
      return false;
    }
    try {
      return InetAddress.getByName(boundHost).isAnyLocalAddress()
          && InetAddress.getByName(host).equals(InetAddress.getByName(ctx.req().getLocalAddr()));
    } catch (UnknownHostException e) {
      return false;
    }
  }

  private static void checkSize(Context ctx) {
    long length = ctx.req().getContentLengthLong();
    boolean films = ctx.isMultipart() && ctx.path().equals(FILMS);
    long most = films ? MOST_FILMS_BYTES : ctx.isMultipart() ? MOST_FILE_BYTES : MOST_FORM_BYTES;
    if (films) {
      ctx.req().setAttribute(
          PARTS, new MultipartConfigElement(System.getProperty("java.io.tmpdir"), MOST_FILMS_BYTES, MOST_FILMS_BYTES, IN_MEMORY_BYTES));
    }
    if (length < 0) {
      throw new Turned(411, "The request does not say how long it is. Send it from a page of boundwright.");
    }
    if (length > most) {
      passOver(ctx, length);
      throw new Turned(
          413,
          "What was sent has " + length + " bytes; the limit is " + most + ". "
              + (films ? "Send fewer films at once" : "Cut a long file in two") + "; nothing was taken.");
    }
  }

  /** Reads the body to nowhere: a browser cut off while it sends shows its own error instead of our sentence. */
  private static void passOver(Context ctx, long length) {
    if (length > MOST_PASSED_OVER_BYTES) {
      return;
    }
    try {
      ctx.req().getInputStream().transferTo(OutputStream.nullOutputStream());
    } catch (IOException ignored) {
      // the sender has left, and the answer goes nowhere either
    }
  }

  private static void checkOrigin(Context ctx) {
    String origin = ctx.header("Origin");
    String site = ctx.header("Sec-Fetch-Site");
    boolean ownOrigin = origin == null || origin.equalsIgnoreCase(ctx.scheme() + "://" + ctx.header("Host"));
    boolean ownSite = site == null || site.equals("same-origin") || site.equals("none");
    if (!ownOrigin || !ownSite) {
      throw new Turned(403, "This was sent from another web page, so nothing was changed. Use boundwright's own pages.");
    }
  }

  private static void checkToken(Context ctx) {
    String held = cookie(ctx);
    String header = ctx.header(HEADER);
    String sent = header == null ? ctx.formParam(FIELD) : header;
    if (held == null || sent == null || !same(held, sent)) {
      throw new Turned(
          403,
          "This page was opened before the browser's cookie was renewed, so nothing was changed."
              + " Go back, reload the page and do it again.");
    }
  }

  private static @Nullable String cookie(Context ctx) {
    String held = ctx.cookie(COOKIE);
    return held != null && held.matches("[0-9a-f]{32}") ? held : null;
  }

  private static boolean same(String a, String b) {
    return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
  }
}
