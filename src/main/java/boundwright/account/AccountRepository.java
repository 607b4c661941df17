package boundwright.account;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/** Keeps accounts, sessions and the notes. Secrets come in as SHA-256, 64 hexadecimal digits, passwords as slow hashes. */
public interface AccountRepository {
  /** All clubs, the first one first. */
  List<Club> clubs();

  /** Keeps a new club; refuses a name that is taken. */
  Club addClub(String name, Instant now);

  /** Gives a club another name; whether there is such a club. */
  boolean renameClub(long club, String name);

  /** All accounts by login. */
  List<Account> all();

  /** The account with this number. */
  Optional<Account> byId(long id);

  /** The account with this login. */
  Optional<Account> byLogin(String login);

  /**
   * Keeps a new account with its first place in a club, both or none; refuses a login that is taken.
   *
   * @param place what the account is, by its new number
   */
  Account add(String login, String name, LongFunction<Membership> place, Instant now);

  /** Lets an account in or shuts it out; shut out, its sessions and links are gone. */
  void setActive(long account, boolean active);

  /** The slow hash of a password; empty if none was set. */
  Optional<String> password(long account);

  /** Keeps the slow hash of a password, or none, and ends all sessions but one. */
  void setPassword(long account, @Nullable String hash, long exceptSession);

  /** What an account is where. */
  List<Membership> memberships(long account);

  /** Who belongs to a club. */
  List<Membership> members(long club);

  /** Keeps what an account is in a club, in place of what it was there. */
  void setMembership(Membership membership);

  /** Takes an account out of a club and ends its sessions there; whether it was in. */
  boolean leave(long account, long club);

  /** Takes whoever is this athlete out of the club; an account that is in no club then is forgotten whole. */
  void forgetAthlete(long club, long athlete);

  /**
   * Keeps a link that lets an account in once; those of the same account from before are gone.
   *
   * @param anew whether whoever uses it sets the password anew: the old one and all that let the account in are forgotten then
   */
  void offer(String codeHash, long account, boolean anew, Instant made, Instant until);

  /**
   * A link that runs.
   *
   * @param accountId whom it lets in
   * @param anew whether the password is to be set anew
   */
  record Link(long accountId, boolean anew) {}

  /** Uses a link up; empty if it is not kept or does not run. */
  Optional<Link> take(String codeHash, Instant now);

  /** The link, if it is kept and runs; uses nothing up. */
  Optional<Link> offered(String codeHash, Instant now);

  /** Keeps a session. */
  void begin(String secretHash, long account, long club, boolean sealed, String browser, Instant now);

  /** The session with this secret. */
  Optional<Session> bySecret(String secretHash);

  /** The session with this number. */
  Optional<Session> session(long number);

  /** Sessions of an account, newest first. */
  List<Session> sessions(long account);

  /** Keeps when a session was last seen. */
  void seen(long session, Instant now);

  /** Lets a session look at another club. */
  void look(long session, long club);

  /** Ends a session of an account; whether there was one. */
  boolean end(long account, long session);

  /** Ends what was last seen, or began, before these. */
  void endOld(Instant lastSeenBefore, Instant begunBefore);

  /** Counts a wrong try by any of these names and forgets those from before {@code from}. */
  void wrong(List<String> by, Instant now, Instant from);

  /** How many wrong tries are kept by this name after a time, and none from later than now, should the clock have been set back. */
  int wrongSince(String by, Instant after, Instant now);

  /** Forgets the wrong tries by this name. */
  void forgive(String by);

  /** Adds a line for good. */
  void note(Noted line);

  /** The newest lines of a club, at most so many. */
  List<Noted> notes(long club, int most);
}
