package boundwright.account;

import org.jspecify.annotations.Nullable;

/**
 * What an account is in a club.
 *
 * @param accountId whose
 * @param clubId where
 * @param role as what
 * @param athleteId which athlete of that club they are; only with {@link Role#ATHLETE}
 */
public record Membership(long accountId, long clubId, Role role, @Nullable Long athleteId) {
  /** Refuses an athlete without a number and a number without an athlete. */
  public Membership {
    if ((role == Role.ATHLETE) != (athleteId != null)) {
      throw new IllegalArgumentException("role " + role + " with athlete " + athleteId);
    }
  }
}
