package boundwright.web.page;

import boundwright.clip.day.SessionDesk;
import boundwright.clip.desk.ClipDesk;
import boundwright.pairing.PhoneRights;
import boundwright.quantity.PlainText;
import boundwright.quantity.Secrets;
import boundwright.web.door.Caller;
import boundwright.web.door.Callers;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.door.Reached;
import boundwright.web.door.Right;
import boundwright.web.door.Rights;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import io.javalin.router.Endpoint;
import jakarta.servlet.MultipartConfigElement;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The one door that every request passes. Refuses a Host that is not ours (a rebound DNS name could otherwise read the
 * squad from any web page), a phone that is not paired or may not do this, a write that another site sent, a write without
 * this browser's own token, and a body that is too large. Sets the headers that keep foreign scripts, styles and frames out.
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
  /** Where the film of a session is sent. */
  public static final String SESSION = "/clips/session";
  /** Largest body with such a film, in bytes. */
  public static final long MOST_SESSION_BYTES = SessionDesk.MAX_FILM_BYTES + MOST_FORM_BYTES;
  /** What of a film is kept in memory while it arrives, in bytes; the rest goes to disk at once. */
  private static final int IN_MEMORY_BYTES = 1 << 16;
  private static final String PARTS = "org.eclipse.jetty.multipartConfig";

  /** Largest body that is read to its end only to be refused in words, in bytes. */
  private static final long MOST_PASSED_OVER_BYTES = 256_000_000;

  private static final String COOKIE = "boundwright_form";
  private static final String FIELD = "csrf";
  private static final String HEADER = "X-Boundwright-Form";
  private static final Set<String> READS = Set.of("GET", "HEAD");
  private static final String CONTENT_POLICY =
      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'";

  private static final String TRUST = "/trust";

  private final Reach reach;
  private final Callers callers;
  private final Notes notes;
  private final RandomGenerator random;
  private final Path arriving;
  private final Arrival arrival = new Arrival();

  /**
   * @param arriving folder in which a film waits while it arrives; emptied when the data folder is opened
   * @param reach by which addresses the server is reached
   * @param callers tells who asks
   * @param notes keeps what was done
   * @param random a generator that cannot be guessed
   */
  public Gate(Path arriving, Reach reach, Callers callers, Notes notes, RandomGenerator random) {
    this.arriving = arriving;
    this.reach = reach;
    this.callers = callers;
    this.notes = notes;
    this.random = random;
  }

  /** What is asked of every request, also of one for a page that there is not; throws {@link Turned} or sends it elsewhere. */
  public void enter(Context ctx) {
    headers(ctx);
    checkHost(ctx);
    if (caller(ctx).reached() == Reached.HTTP && reach.https() && !isBeforeTrust(ctx)) {
      if (isWrite(ctx)) {
        throw new Turned(403, "This came over plain http, where others on the Wi-Fi can read along, so nothing was changed. Open " + TRUST + " first.");
      }
      ctx.redirect(TRUST);
      ctx.skipRemainingHandlers();
    }
    toTheirOwn(ctx);
  }

  /** Where an athlete begins: at their own page, since the squad is not theirs to see. */
  private void toTheirOwn(Context ctx) {
    Long athlete = caller(ctx).athlete();
    if (athlete != null && ctx.path().equals("/") && !isWrite(ctx)) {
      ctx.redirect("/athlete/" + athlete);
      ctx.skipRemainingHandlers();
    }
  }

  /** What a phone needs before it trusts the certificate. */
  private static boolean isBeforeTrust(Context ctx) {
    return ctx.path().equals(TRUST) || ctx.path().startsWith(TRUST + "/") || ctx.path().startsWith("/assets/");
  }

  /** What is asked before a page answers; throws {@link Turned}. The rights come first, so that nobody's body is read in vain. */
  public void check(Context ctx) {
    checkRights(ctx);
    if (isWrite(ctx)) {
      checkSize(ctx);
      checkOrigin(ctx);
      arrival.whole(ctx);
      checkToken(ctx);
      checkTexts(ctx);
    }
  }

  /** Who asks. */
  public Caller caller(Context ctx) {
    return callers.of(ctx);
  }

  private void checkRights(Context ctx) {
    Caller caller = caller(ctx);
    Rights.Line line = line(ctx).orElse(null);
    boolean let = line == null ? caller.machine() : caller.may(line.right()) && isOwn(caller, line, ctx);
    if (let) {
      return;
    }
    if (caller.stranger()) {
      throw stranger();
    }
    throw new Turned(403, refusal(caller, line == null ? Right.CLUB : line.right()));
  }

  private static Optional<Rights.Line> line(Context ctx) {
    Endpoint endpoint = ctx.endpoints().matchedHttpEndpoint();
    return endpoint == null ? Optional.empty() : Rights.of(endpoint.method.toString(), endpoint.path);
  }

  /** An athlete is let in to what is open to all, to their account, and to what is of one athlete if it is of themselves. */
  private static boolean isOwn(Caller caller, Rights.Line line, Context ctx) {
    Long athlete = caller.athlete();
    return athlete == null || Set.of(Right.OPEN, Right.IN, Right.SELF).contains(line.right())
        || (line.ofOneAthlete() && ctx.pathParamMap().getOrDefault("id", "").equals(athlete.toString()));
  }

  private String refusal(Caller caller, Right needed) {
    if (caller.phone() != null) {
      return needed.isIn(PhoneRights.ALL)
          ? "This phone may not do that, so nothing was changed. The coach can allow it more, under Phones."
          : "No phone does this, so nothing was changed. Log in, or do it on the coach's laptop itself, at " + reach.own() + ".";
    }
    return "You are here as " + caller.role() + ", and this is not open to you. Nothing was changed. The head coach can change that, under Accounts.";
  }

  /** Keeps a line of what was done, where the table of rights asks for one. */
  public void note(Context ctx) {
    int status = ctx.statusCode();
    line(ctx)
        .filter(l -> !l.noted().isEmpty() && status < 400)
        .ifPresent(l -> noted(ctx, l.noted(), ctx.pathParamMap().containsKey("id") ? ctx.path().split("/")[1] + " " + ctx.pathParam("id") : ""));
  }

  /** Keeps a line of what was done. */
  public void noted(Context ctx, String what, String about) {
    notes.keep(caller(ctx), what, about);
  }

  /** What somebody is told whom nobody let in. */
  public Turned stranger() {
    return new Turned(
        401,
        "Log in, or ask the coach for a code: under Phones. Point this phone's camera at it and open the address."
            + " A code lasts ten minutes and lets one phone in. Are you at the laptop? Open the address that its terminal shows.");
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
      cookie.setSecure(reach.isSealed(ctx.req()));
      ctx.cookie(cookie);
    }
    ctx.attribute(COOKIE, token);
    return token;
  }

  /** A text that is used once and cannot be guessed: 32 hexadecimal digits. */
  public String fresh() {
    return Secrets.fresh(random);
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
    if (host != null && (Reach.isLoopbackHost(host) || reach.isOurs(host, reach.isSealed(ctx.req())))) {
      return;
    }
    throw new Turned(
        421,
        "This address is not one of boundwright's. Open it as " + reach.own() + " on the laptop"
            + (reach.forPhones() ? ", or by an address that the laptop shows under Phones. If the laptop has joined another Wi-Fi since, close boundwright there and open it again." : "."));
  }

  private void checkSize(Context ctx) {
    long length = ctx.req().getContentLengthLong();
    boolean session = ctx.isMultipart() && ctx.path().equals(SESSION);
    boolean films = session || (ctx.isMultipart() && ctx.path().equals(FILMS));
    long most = session ? MOST_SESSION_BYTES : films ? MOST_FILMS_BYTES : ctx.isMultipart() ? MOST_FILE_BYTES : MOST_FORM_BYTES;
    if (films) {
      ctx.req().setAttribute(PARTS, new MultipartConfigElement(arriving.toString(), most, most, IN_MEMORY_BYTES));
    }
    if (length < 0) {
      throw new Turned(411, "The request does not say how long it is. Send it from a page of boundwright.");
    }
    if (length > most) {
      if (length <= MOST_PASSED_OVER_BYTES) {
        arrival.passOver(ctx);
      }
      throw new Turned(
          413,
          "What was sent has " + length + " bytes; the limit is " + most + ". "
              + (session ? "Film in 720p, which is enough" : films ? "Send fewer films at once" : "Cut a long file in two") + "; nothing was taken.");
    }
  }

  private void checkOrigin(Context ctx) {
    String origin = ctx.header("Origin");
    String site = ctx.header("Sec-Fetch-Site");
    boolean ownOrigin = origin == null || origin.equalsIgnoreCase((reach.isSealed(ctx.req()) ? "https" : "http") + "://" + ctx.header("Host"));
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

  /** What is typed or pasted into a form; what comes in files is looked at where it is read. */
  private static void checkTexts(Context ctx) {
    ctx.formParamMap().values().forEach(values -> values.forEach(PlainText::checked));
  }

  private static @Nullable String cookie(Context ctx) {
    String held = ctx.cookie(COOKIE);
    return held != null && Secrets.looksLike(held) ? held : null;
  }

  private static boolean same(String a, String b) {
    return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
  }
}
