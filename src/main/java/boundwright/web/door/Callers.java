package boundwright.web.door;

import boundwright.account.Accounts;
import boundwright.account.Membership;
import boundwright.pairing.Pairing;
import boundwright.pairing.Phone;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import jakarta.servlet.http.HttpServletRequest;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Collections;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Tells who asks: the machine itself, somebody logged in, a paired phone, or a stranger. */
public final class Callers {
  private static final String CALLER = "boundwright.caller";
  private static final String PHONE = "boundwright_phone";
  private static final String SESSION = "boundwright_who";
  /** Browsers take a cookie whose name begins so only over https, and only from this very host. */
  private static final String SEALED = "__Host-";
  /** As long as browsers keep a cookie at most [s]. */
  private static final int KEPT_S = 400 * 24 * 3600;
  /** Headers by which a proxy says that somebody else is asking. */
  private static final Set<String> PASSED_ON = Set.of("forwarded", "via", "x-real-ip", "x-client-ip");

  private final Pairing pairing;
  private final Accounts accounts;
  private final Reach reach;

  public Callers(Pairing pairing, Accounts accounts, Reach reach) {
    this.pairing = pairing;
    this.accounts = accounts;
    this.reach = reach;
  }

  /** Who asks; found once for each request. */
  public Caller of(Context ctx) {
    return of(ctx.req());
  }

  /** As {@link #of(Context)}. */
  public Caller of(HttpServletRequest request) {
    Caller known = (Caller) request.getAttribute(CALLER);
    if (known == null) {
      known = find(request);
      request.setAttribute(CALLER, known);
    }
    return known;
  }

  private Caller find(HttpServletRequest request) {
    boolean here = isHere(request);
    // with a door that others can reach, also whoever comes from this machine says who they are: a proxy could stand there
    if (here && !reach.forOthers()) {
      return Caller.machine(Reached.LOOPBACK);
    }
    boolean sealed = reach.isSealed(request);
    Reached reached = here ? Reached.LOOPBACK : sealed ? Reached.HTTPS : Reached.HTTP;
    String secret = cookie(request, SESSION, sealed);
    Optional<Accounts.Seat> seat = secret == null ? Optional.empty() : accounts.seat(secret, sealed);
    if (seat.isPresent()) {
      return Caller.of(reached, seat.get());
    }
    String phoneSecret = cookie(request, PHONE, sealed);
    @Nullable Phone phone = phoneSecret == null ? null : pairing.known(phoneSecret, sealed).orElse(null);
    Long owner = phone == null ? null : phone.owner().account();
    if (phone == null || owner == null) {
      return Caller.of(reached, phone, null);
    }
    @Nullable Membership as = accounts.kept().memberships(owner).stream().filter(m -> m.clubId() == phone.owner().club()).findFirst().orElse(null);
    return as == null ? Caller.of(reached, null, null) : Caller.of(reached, phone, as);
  }

  private static @Nullable String cookie(HttpServletRequest request, String name, boolean sealed) {
    String asked = sealed ? SEALED + name : name;
    jakarta.servlet.http.Cookie[] all = request.getCookies();
    if (all != null) {
      for (jakarta.servlet.http.Cookie one : all) {
        if (one.getName().equals(asked)) {
          return one.getValue();
        }
      }
    }
    return null;
  }

  /** The socket decides, not what the request says of itself; a proxy on this machine speaks for somebody else. */
  private static boolean isHere(HttpServletRequest request) {
    String host = request.getHeader("Host");
    return host != null
        && Reach.isLoopbackHost(host)
        && isLoopback(request.getRemoteAddr())
        && isLoopback(request.getLocalAddr())
        && Collections.list(request.getHeaderNames()).stream()
            .map(h -> h.toLowerCase(Locale.ROOT))
            .noneMatch(h -> PASSED_ON.contains(h) || h.startsWith("x-forwarded"));
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
    give(ctx, PHONE, secret, KEPT_S);
  }

  /** Gives a browser the secret of its session. */
  public void seat(Context ctx, String secret) {
    give(ctx, SESSION, secret, KEPT_S);
  }

  /** Takes the secret of its session from a browser. */
  public void leave(Context ctx) {
    give(ctx, SESSION, "", 0);
  }

  private void give(Context ctx, String name, String secret, int kept_s) {
    boolean sealed = reach.isSealed(ctx.req());
    Cookie cookie = new Cookie(sealed ? SEALED + name : name, secret);
    cookie.setPath("/");
    cookie.setHttpOnly(true);
    cookie.setSecure(sealed);
    cookie.setSameSite(SameSite.STRICT);
    cookie.setMaxAge(kept_s);
    ctx.cookie(cookie);
  }
}
