package boundwright.web.door;

import boundwright.pairing.Pairing;
import boundwright.pairing.Phone;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Tells who asks: the machine itself, a paired phone, or a stranger. */
public final class Callers {
  private static final String CALLER = "boundwright.caller";
  private static final String OPEN_COOKIE = "boundwright_phone";
  /** Browsers take a cookie of this name only over https, and only from this very host. */
  private static final String SEALED_COOKIE = "__Host-boundwright_phone";
  /** As long as browsers keep a cookie at most [s]. */
  private static final int KEPT_S = 400 * 24 * 3600;
  /** Headers by which a proxy says that somebody else is asking. */
  private static final Set<String> PASSED_ON = Set.of("forwarded", "via", "x-real-ip", "x-client-ip");

  private final Pairing pairing;

  public Callers(Pairing pairing) {
    this.pairing = pairing;
  }

  /** Who asks; found once for each request. */
  public Caller of(Context ctx) {
    Caller known = ctx.attribute(CALLER);
    if (known == null) {
      known = find(ctx);
      ctx.attribute(CALLER, known);
    }
    return known;
  }

  private Caller find(Context ctx) {
    if (isLaptop(ctx)) {
      return new Caller(Reached.LOOPBACK, null);
    }
    boolean sealed = ctx.req().isSecure();
    String secret = ctx.cookie(sealed ? SEALED_COOKIE : OPEN_COOKIE);
    @Nullable Phone phone = secret == null ? null : pairing.known(secret, sealed).orElse(null);
    return new Caller(sealed ? Reached.HTTPS : Reached.HTTP, phone);
  }

  /** The socket decides, not what the request says of itself; a proxy on this machine speaks for somebody else. */
  private static boolean isLaptop(Context ctx) {
    String host = ctx.header("Host");
    return host != null
        && Reach.isLoopbackHost(host)
        && isLoopback(ctx.req().getRemoteAddr())
        && isLoopback(ctx.req().getLocalAddr())
        && ctx.headerMap().keySet().stream().map(h -> h.toLowerCase(Locale.ROOT)).noneMatch(h -> PASSED_ON.contains(h) || h.startsWith("x-forwarded"));
  }

  private static boolean isLoopback(@Nullable String address) {
    if (address == null || !address.matches("[0-9a-fA-F:.\\[\\]%]+")) {
      return false;
    }
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  /** Gives a phone the secret that it sends from now on. */
  public void letIn(Context ctx, String secret) {
    boolean sealed = ctx.req().isSecure();
    Cookie cookie = new Cookie(sealed ? SEALED_COOKIE : OPEN_COOKIE, secret);
    cookie.setPath("/");
    cookie.setHttpOnly(true);
    cookie.setSecure(sealed);
    cookie.setSameSite(SameSite.STRICT);
    cookie.setMaxAge(KEPT_S);
    ctx.cookie(cookie);
  }
}
