package boundwright.web.door;

import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRights;
import org.jspecify.annotations.Nullable;

/**
 * Who asks.
 *
 * @param reached how they came
 * @param phone the paired phone; null for the machine itself and for a stranger
 */
public record Caller(Reached reached, @Nullable Phone phone) {
  /** Whether it is the machine itself. */
  public boolean laptop() {
    return reached == Reached.LOOPBACK;
  }

  /** Whether nobody knows this phone. */
  public boolean stranger() {
    return !laptop() && phone == null;
  }

  /** Whether it is let in where this right is needed. */
  public boolean may(Right right) {
    Phone who = phone;
    return laptop() || right == Right.OPEN || (who != null && right.isIn(who.rights()));
  }

  /** Whether it may change the squad and not only log. */
  public boolean all() {
    return may(Right.ALL);
  }

  /** Whether it is a phone that may log and no more. */
  public boolean logOnly() {
    Phone who = phone;
    return who != null && who.rights() == PhoneRights.LOG;
  }
}
