package boundwright.web.door;

import boundwright.account.Accounts.Seat;
import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Role;
import boundwright.account.Session;
import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRights;
import boundwright.store.view.Seen;
import org.jspecify.annotations.Nullable;

/**
 * Who asks.
 *
 * @param reached how they came
 * @param machine whether it is the machine itself, where nobody else can reach the pages
 * @param phone the paired phone, or null
 * @param as what they are, logged in or as the owner of the phone; null for the machine, for its own phones and for a stranger
 * @param session with which browser they are logged in, or null
 */
public record Caller(Reached reached, boolean machine, @Nullable Phone phone, @Nullable Membership as, @Nullable Session session) {
  static Caller machine(Reached reached) {
    return new Caller(reached, true, null, null, null);
  }

  static Caller of(Reached reached, Seat seat) {
    return new Caller(reached, false, null, seat.membership(), seat.session());
  }

  static Caller of(Reached reached, @Nullable Phone phone, @Nullable Membership owner) {
    return new Caller(reached, false, phone, owner, null);
  }

  /** Whether nobody knows them. */
  public boolean stranger() {
    return !machine && phone == null && as == null;
  }

  /** Whether they are let in where this right is needed; of an athlete's own it says nothing, see {@link #athlete}. */
  public boolean may(Right right) {
    if (machine || right == Right.OPEN) {
      return true;
    }
    Membership who = as;
    Phone by = phone;
    return (who != null || by != null) && (who == null || right.isIn(who.role())) && (by == null || right.isIn(by.rights()));
  }

  /** The one athlete whose pages they see; null if they see those of the squad. */
  public @Nullable Long athlete() {
    Membership who = as;
    return who == null ? null : who.athleteId();
  }

  /** The club whose store they look into. */
  public long club() {
    Phone by = phone;
    Membership who = as;
    return by != null ? by.owner().club() : who != null ? who.clubId() : Club.FIRST;
  }

  /** How much of it they see. */
  public Seen seen() {
    Membership who = as;
    Long only = athlete();
    return only != null ? Seen.only(only) : who != null && !who.role().seesBodies() ? Seen.WITHOUT_BODIES : Seen.ALL;
  }

  /** Whether they may change the squad and not only log. */
  public boolean all() {
    return may(Right.TEACH);
  }

  /** Whether they answer for the club: accounts, backups. */
  public boolean head() {
    return may(Right.CLUB);
  }

  /** Whether they may enter what happens at the runway. */
  public boolean mayLog() {
    return may(Right.LOG);
  }

  /** Whether it is somebody who may log and no more. */
  public boolean logOnly() {
    Phone by = phone;
    return by != null && by.rights() == PhoneRights.LOG;
  }

  /** Whether they enter nothing about training. */
  public boolean looksOnly() {
    return !stranger() && !mayLog();
  }

  /** As what they came, in words. */
  public String said() {
    Session with = session;
    Phone by = phone;
    Membership who = as;
    if (with != null) {
      return with.account().login();
    }
    return by != null ? "phone " + by.name() : machine ? "this machine" : who != null ? who.role().label() : "nobody";
  }

  /** The role in words; empty without an account. */
  public String role() {
    Membership who = as;
    return who == null ? "" : who.role().label();
  }

  /** Whether they have this role. */
  public boolean is(Role role) {
    Membership who = as;
    return who != null && who.role() == role;
  }
}
