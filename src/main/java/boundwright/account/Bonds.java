package boundwright.account;

import boundwright.quantity.RefusedException;
import boundwright.quantity.Secrets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Lets people in whom a department's server vouches for. Who that is here was said by themselves, logged in or with a link; never by a mail
 * address, which others may get later. Who is away is kept in the store, so that any of several servers takes them back.
 */
public final class Bonds {
  /** How long somebody may be away. */
  public static final Duration VISIT_LASTS = Duration.ofMinutes(10);
  /** How many are waited for at once (judgement: thrice a Monday evening of 60 clubs). */
  public static final int MOST_VISITS = 2_000;

  private final BondRepository kept;
  private final Accounts accounts;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random a generator that cannot be guessed */
  public Bonds(BondRepository kept, Accounts accounts, Clock clock, RandomGenerator random) {
    this.kept = kept;
    this.accounts = accounts;
    this.clock = clock;
    this.random = random;
  }

  /**
   * What somebody takes along.
   *
   * @param state comes back with them in the address
   * @param nonce comes back inside what the department signs
   * @param verifier stays here; 64 characters (RFC 7636 asks for 43 to 128)
   */
  public record Going(String state, String nonce, String verifier) {}

  /** What a browser is given before it goes; one that has been given something keeps it, since two pages may be away. */
  public String browser(@Nullable String held) {
    return held != null && Secrets.looksLike(held) ? held : Secrets.fresh(random);
  }

  /** Sends somebody to come in. */
  public Going toLogIn(String browser) {
    return send(browser, Visit.Purpose.LOGIN, null, null);
  }

  /** Sends somebody who is logged in. */
  public Going toConnect(Session session, String browser) {
    return send(browser, Visit.Purpose.CONNECT, session.id(), null);
  }

  /** Sends somebody who was given a link with which a password can be set. The link is used up when they are back. */
  public Going byLink(String code, String browser) {
    return send(browser, Visit.Purpose.LINK, null, Secrets.hash(code));
  }

  private Going send(String browser, Visit.Purpose purpose, @Nullable Long session, @Nullable String link) {
    Instant now = clock.instant();
    Going going = new Going(Secrets.fresh(random), Secrets.fresh(random), Secrets.fresh(random) + Secrets.fresh(random));
    Visit visit =
        new Visit(Secrets.hash(going.state()), Secrets.hash(browser), going.nonce(), going.verifier(), purpose, session, link, now.plus(VISIT_LASTS));
    if (!kept.send(visit, now, MOST_VISITS)) {
      throw new RefusedException("More than " + MOST_VISITS + " people are logging in at the department just now. Wait " + VISIT_LASTS.toMinutes() + " minutes.");
    }
    return going;
  }

  /**
   * Takes somebody back, once.
   *
   * @param state what the address says
   * @param browser what the browser says
   */
  public Visit back(String state, String browser) {
    Optional<Visit> visit = Secrets.looksLike(state) ? kept.back(Secrets.hash(state), clock.instant()) : Optional.empty();
    return visit
        .filter(v -> v.browser().equals(Secrets.hash(browser)))
        .orElseThrow(
            () ->
                new RefusedException(
                    "This way back from the department does not hold: it works once, within " + VISIT_LASTS.toMinutes()
                        + " minutes, and in the browser that set out. Begin again on the page Log in."));
  }

  /**
   * Somebody who is back.
   *
   * @param account whose account it is here
   * @param club which club they look at
   * @param secret of their new session; empty for somebody who was logged in before they went
   */
  public record Came(Account account, long club, String secret) {}

  /**
   * Does what somebody went for.
   *
   * @param identity who the department says that they are
   * @param sealed whether nobody could read the request along
   * @param browser what the browser calls itself
   * @throws RefusedException if this login is not connected, or cannot be; says why
   */
  public Came finish(Visit visit, Identity identity, boolean sealed, String browser) {
    return switch (visit.purpose()) {
      case LOGIN -> in(kept.of(identity).map(Bond::accountId).orElseThrow(Bonds::unknown), sealed, browser);
      case CONNECT -> connect(visit, identity);
      case LINK -> in(kept.accept(String.valueOf(visit.link()), identity, clock.instant()).orElseThrow(Bonds::linkGone), sealed, browser);
    };
  }

  private static RefusedException unknown() {
    return new RefusedException(
        "No account here is connected with this login. Whoever has an account logs in with it and connects the two under Account;"
            + " whoever has none asks the head coach for a link.");
  }

  private static RefusedException linkGone() {
    return new RefusedException("The link ended while you were away, so nothing was connected. Ask the head coach for a new one.");
  }

  private Came in(long account, boolean sealed, String browser) {
    String secret = accounts.enter(account, sealed, browser);
    Accounts.Seat seat = accounts.seat(secret, sealed).orElseThrow();
    return new Came(seat.session().account(), seat.membership().clubId(), secret);
  }

  /** Strict cookies do not come along from another site, so who asked is known by the session in which they did. */
  private Came connect(Visit visit, Identity identity) {
    Session session =
        accounts
            .running(visit.session() == null ? 0 : visit.session())
            .orElseThrow(() -> new RefusedException("You were logged out while you were away, so nothing was connected. Log in and begin again under Account."));
    kept.add(new Bond(identity, session.account().id(), clock.instant()));
    return new Came(session.account(), session.clubId(), "");
  }

  /** The login of an account at this server. */
  public Optional<Bond> of(long account, String issuer) {
    return kept.of(account, issuer);
  }

  /**
   * Takes a login from an account.
   *
   * @param otherWay whether the account can come in without it
   */
  public void remove(long account, String issuer, boolean otherWay) {
    if (!otherWay) {
      throw new RefusedException("This is the only way into your account. Set a password first. Nothing was changed.");
    }
    if (!kept.remove(account, issuer)) {
      throw new RefusedException("This login is not connected any more. Reload the page.");
    }
  }
}
