package boundwright.account;

import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import boundwright.quantity.Secrets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Makes accounts and lets people in: by a link that works once, or by login and password. Nobody is told whether a login exists, and
 * whoever tries passwords out must wait; the tries are counted in the store, so several servers count together.
 */
public final class Accounts {
  /** How long a link waits. */
  public static final Duration LINK_LASTS = Duration.ofDays(7);
  /** How long the link waits that a terminal shows. */
  public static final Duration ENTRANCE_LASTS = Duration.ofHours(12);
  /** How long a session lasts that is not used. */
  public static final Duration IDLE = Duration.ofDays(30);
  /** How long any session lasts. */
  public static final Duration LONGEST = Duration.ofDays(180);
  /** How finely it is kept when a session was last seen. */
  public static final Duration SEEN_STEP = Duration.ofMinutes(5);
  /** Wrong passwords for a login within {@link #WAIT}, after which it waits. */
  public static final int MOST_WRONG = 5;
  /** Wrong passwords from an address within {@link #WAIT}: a club's Wi-Fi is one address. */
  public static final int MOST_WRONG_FROM = 30;
  /** How far back wrong tries are counted. */
  public static final Duration WAIT = Duration.ofMinutes(10);

  private static final String LOGIN = "[a-z0-9][a-z0-9._@+-]{2,59}";
  private static final int LONGEST_NAME = 60;

  private final AccountRepository kept;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random a generator that cannot be guessed */
  public Accounts(AccountRepository kept, Clock clock, RandomGenerator random) {
    this.kept = kept;
    this.clock = clock;
    this.random = random;
  }

  /** What is kept. */
  public AccountRepository kept() {
    return kept;
  }

  /**
   * Who is let in as what.
   *
   * @param session with which browser
   * @param membership as what, in the club that is looked at
   */
  public record Seat(Session session, Membership membership) {}

  /** Makes an account with a place in a club; it comes in by a link first. */
  public Account make(String login, String name, Role role, long club, @Nullable Long athlete) {
    String key = login(login);
    Long whose = athleteOf(role, athlete);
    return kept.add(key, name(name), id -> new Membership(id, club, role, whose), clock.instant());
  }

  private static @Nullable Long athleteOf(Role role, @Nullable Long athlete) {
    if (role == Role.ATHLETE && athlete == null) {
      throw new RefusedException("An account of an athlete needs to know which athlete. Choose one from the list. Nothing was kept.");
    }
    return role == Role.ATHLETE ? athlete : null;
  }

  /** Makes a club with a store of its own, still without people. */
  public Club addClub(String name) {
    return kept.addClub(name(name), clock.instant());
  }

  /** Gives a club another name. */
  public void renameClub(long club, String name) {
    if (!kept.renameClub(club, name(name))) {
      throw new RefusedException("No club has the number " + club + ". Nothing was changed; reload the page.");
    }
  }

  /** Makes somebody head coach of a club that has none: a new account, or one that is there already by its login. */
  public Account head(long club, String login, String name) {
    if (kept.clubs().stream().noneMatch(c -> c.id() == club)) {
      throw new RefusedException("No club has the number " + club + ". Nothing was changed; reload the page.");
    }
    if (kept.members(club).stream().anyMatch(m -> m.role() == Role.HEAD_COACH)) {
      throw new RefusedException("This club has a head coach, who makes the club's accounts. Nothing was changed.");
    }
    Optional<Account> known = kept.byLogin(login(login)).filter(Account::active);
    if (known.isPresent()) {
      kept.setMembership(new Membership(known.get().id(), club, Role.HEAD_COACH, null));
      return known.get();
    }
    return make(login, name, Role.HEAD_COACH, club, null);
  }

  private static String name(String text) {
    String name = PlainText.checked(text.strip());
    int length = name.codePointCount(0, name.length());
    if (length < 1 || length > LONGEST_NAME) {
      throw new RefusedException("The name has " + length + " characters; 1 to " + LONGEST_NAME + " are taken. Nothing was kept.");
    }
    return name;
  }

  /** A login as it is kept. */
  public static String login(String text) {
    String key = text.strip().toLowerCase(Locale.ROOT);
    if (!key.matches(LOGIN)) {
      throw new RefusedException(
          "The login '" + (key.length() > 60 ? key.substring(0, 60) + "..." : key) + "' cannot be taken: 3 to 60 letters without accents, digits and . _ @ + -, a letter or digit first. Nothing was kept.");
    }
    return key;
  }

  /** Gives an account another place in a club. A club keeps one head coach at least. */
  public void setRole(long account, long club, Role role, @Nullable Long athlete) {
    if (role != Role.HEAD_COACH) {
      keepsAHead(account, club);
    }
    kept.setMembership(new Membership(account, club, role, athleteOf(role, athlete)));
  }

  /** Takes an account out of a club. */
  public void leave(long account, long club) {
    keepsAHead(account, club);
    if (!kept.leave(account, club)) {
      throw new RefusedException("This account is not in the club. Nothing was changed; reload the page.");
    }
    if (kept.memberships(account).isEmpty()) {
      kept.setActive(account, false);
    }
  }

  private void keepsAHead(long account, long club) {
    boolean other =
        kept.members(club).stream()
            .filter(m -> m.role() == Role.HEAD_COACH && m.accountId() != account)
            .anyMatch(m -> kept.byId(m.accountId()).map(Account::active).orElse(false));
    boolean isHead = kept.members(club).stream().anyMatch(m -> m.accountId() == account && m.role() == Role.HEAD_COACH);
    if (isHead && !other) {
      throw new RefusedException("This is the club's only head coach. Make another one first. Nothing was changed.");
    }
  }

  /** The head coach of the first club who sits at the machine itself, made if there is none. */
  public Account atTheMachine() {
    return kept.members(Club.FIRST).stream()
        .filter(m -> m.role() == Role.HEAD_COACH)
        .map(m -> kept.byId(m.accountId()).orElse(null))
        .filter(Objects::nonNull)
        .filter(Account::active)
        .min((a, b) -> Long.compare(a.id(), b.id()))
        .orElseGet(() -> make(freeLogin(), "Head coach", Role.HEAD_COACH, Club.FIRST, null));
  }

  private String freeLogin() {
    String login = "coach";
    for (int n = 2; kept.byLogin(login).isPresent(); n++) {
      login = "coach" + n;
    }
    return login;
  }

  /** A link that lets an account in once to set its password anew: 32 hexadecimal digits. One from before holds no longer. */
  public String link(long account) {
    return link(account, true, LINK_LASTS);
  }

  /** A link for whoever sits at the machine itself: lets the head coach's browser in and leaves the password as it is. */
  public String entrance() {
    return link(atTheMachine().id(), false, ENTRANCE_LASTS);
  }

  private String link(long account, boolean anew, Duration lasts) {
    String code = Secrets.fresh(random);
    Instant now = clock.instant();
    kept.offer(Secrets.hash(code), account, anew, now, now.plus(lasts));
    return code;
  }

  /**
   * What a link offers.
   *
   * @param account whom it lets in
   * @param anew whether the password is to be set with it
   */
  public record Offered(Account account, boolean anew) {}

  /** What a link offers; empty if it does not hold. Uses nothing up. */
  public Optional<Offered> offered(String code) {
    return Secrets.looksLike(code) ? kept.offered(Secrets.hash(code), clock.instant()).flatMap(this::offered) : Optional.empty();
  }

  private Optional<Offered> offered(AccountRepository.Link link) {
    return kept.byId(link.accountId()).filter(Account::active).map(a -> new Offered(a, link.anew()));
  }

  /**
   * Uses a link up; answers the secret of the new session, or empty if the link does not hold.
   *
   * @param password the new password, for a link with which it is set; ignored for others
   * @throws RefusedException if the password cannot be taken; the link still holds then
   */
  public Optional<String> enter(String code, String password, boolean sealed, String browser) {
    Optional<Offered> offer = offered(code);
    String hash = offer.filter(Offered::anew).map(o -> Passwords.hash(password, o.account().login())).orElse(null);
    return offer
        .flatMap(o -> kept.take(Secrets.hash(code), clock.instant()))
        .flatMap(this::offered)
        .map(
            o -> {
              if (hash != null) {
                kept.setPassword(o.account().id(), hash, 0);
              }
              return begin(o.account(), sealed, browser);
            });
  }

  /**
   * Lets somebody in by login and password; answers the secret of the new session.
   *
   * @param from the address that asks
   * @throws RefusedException if login and password do not fit together, or too many wrong ones came; says which, but never whether the
   *     login exists
   */
  public String enter(String login, String password, String from, boolean sealed, String browser) {
    String key = login.strip().toLowerCase(Locale.ROOT);
    Instant now = clock.instant();
    Instant since = now.minus(WAIT);
    String byLogin = "login " + Secrets.hash(key);
    String byAddress = "from " + from;
    if (kept.wrongSince(byLogin, since, now) >= MOST_WRONG || kept.wrongSince(byAddress, since, now) >= MOST_WRONG_FROM) {
      throw new WaitException(
          "Too many wrong passwords: " + MOST_WRONG + " are taken for one login in " + WAIT.toMinutes() + " minutes. Wait " + WAIT.toMinutes()
              + " minutes, or ask the head coach for a link.");
    }
    Optional<Account> account = kept.byLogin(key).filter(Account::active);
    String hash = account.flatMap(a -> kept.password(a.id())).orElse(Nobody.HASH);
    // also for a login that there is not, so that the time says nothing
    boolean right = Passwords.matches(password, hash) && account.isPresent() && !hash.equals(Nobody.HASH);
    if (!right) {
      kept.wrong(List.of(byLogin, byAddress), now, since);
      throw new RefusedException("Login and password do not fit together. Try again, or ask the head coach for a link.");
    }
    kept.forgive(byLogin);
    return begin(account.get(), sealed, browser);
  }

  /** Said to whoever must wait before the next try. */
  public static final class WaitException extends RefusedException {
    private static final long serialVersionUID = 1L;

    WaitException(String sentence) {
      super(sentence);
    }
  }

  /** The hash of a password that nobody has. */
  private static final class Nobody {
    static final String HASH = Passwords.hash("a jumper who never logs in " + Integer.toHexString(System.identityHashCode(Nobody.class)), "no-one-at-all");
  }

  /** Lets in whoever has proven to be this account, by a passkey or at their department; answers the secret of the new session. */
  public String enter(long account, boolean sealed, String browser) {
    return begin(
        kept.byId(account).filter(Account::active).orElseThrow(() -> new RefusedException("This account is shut out. Ask the head coach.")), sealed, browser);
  }

  private String begin(Account account, boolean sealed, String browser) {
    List<Membership> places = kept.memberships(account.id());
    if (places.isEmpty()) {
      throw new RefusedException("This account is in no club any more. Ask the head coach.");
    }
    String secret = Secrets.fresh(random);
    Instant now = clock.instant();
    kept.endOld(now.minus(IDLE), now.minus(LONGEST));
    kept.begin(Secrets.hash(secret), account.id(), places.get(0).clubId(), sealed, browser.substring(0, Math.min(120, browser.length())), now);
    return secret;
  }

  /** Who has this session, and as what; empty if it ended or the account was shut out. */
  public Optional<Seat> seat(String secret, boolean sealed) {
    if (!Secrets.looksLike(secret)) {
      return Optional.empty();
    }
    Instant now = clock.instant();
    Optional<Session> found =
        kept.bySecret(Secrets.hash(secret))
            .filter(s -> s.sealed() || !sealed)
            .filter(s -> runs(s, now));
    found.filter(s -> Duration.between(s.lastSeen(), now).abs().compareTo(SEEN_STEP) >= 0).ifPresent(s -> kept.seen(s.id(), now));
    return found.flatMap(s -> kept.memberships(s.account().id()).stream().filter(m -> m.clubId() == s.clubId()).findFirst().map(m -> new Seat(s, m)));
  }

  /** The session with this number; empty if it ended or the account was shut out. */
  public Optional<Session> running(long session) {
    return kept.session(session).filter(s -> runs(s, clock.instant()));
  }

  private static boolean runs(Session s, Instant now) {
    return s.account().active() && s.lastSeen().isAfter(now.minus(IDLE)) && s.since().isAfter(now.minus(LONGEST));
  }

  /** Sets the password of somebody who is logged in; who has one says it first. All their other sessions end. */
  public void setPassword(Session session, String old, String fresh) {
    Account account = session.account();
    Optional<String> now = kept.password(account.id());
    if (now.isPresent() && !Passwords.matches(old, now.get())) {
      throw new RefusedException("The old password is not that. Nothing was changed. Forgotten? Ask the head coach for a link, and log in with it.");
    }
    kept.setPassword(account.id(), Passwords.hash(fresh, account.login()), session.id());
  }

  /** Shuts an account out, or lets it in again. */
  public void setActive(long account, boolean active) {
    if (!active) {
      kept.memberships(account).forEach(m -> keepsAHead(account, m.clubId()));
    }
    kept.setActive(account, active);
  }
}
