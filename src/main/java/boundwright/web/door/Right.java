package boundwright.web.door;

import static boundwright.account.Role.ASSISTANT;
import static boundwright.account.Role.ATHLETE;
import static boundwright.account.Role.HEAD_COACH;
import static boundwright.account.Role.MEDICAL;
import static boundwright.account.Role.READER;

import boundwright.account.Role;
import boundwright.pairing.PhoneRights;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a route is about, and so who is let in. The machine itself, where nobody else can reach it, is let in everywhere. */
public enum Right {
  /** How to log in, to pair and to trust, and what those pages are drawn with: everybody. */
  OPEN(null),
  /** What says nothing of anybody: whoever is let in at all. */
  IN(PhoneRights.LOG, HEAD_COACH, ASSISTANT, MEDICAL, ATHLETE, READER),
  /** One's own account: whoever is logged in. */
  SELF(null, HEAD_COACH, ASSISTANT, MEDICAL, ATHLETE, READER),
  /** Marks, tapes, plan, cards, meets. */
  LOOK(PhoneRights.LOG, HEAD_COACH, ASSISTANT, MEDICAL, READER),
  /** The same of one athlete; athletes see their own. */
  LOOK_AT(PhoneRights.LOG, HEAD_COACH, ASSISTANT, MEDICAL, READER, ATHLETE),
  /** Entering what happens at the runway and in a meet, and taking it back. */
  LOG(PhoneRights.LOG, HEAD_COACH, ASSISTANT),
  /** An athlete's load, jumps, tests and reports; athletes see their own. */
  KNOW(PhoneRights.ALL, HEAD_COACH, ASSISTANT, MEDICAL, ATHLETE),
  /** Entering pain, its next morning and a session's rating; athletes their own. */
  TELL(PhoneRights.ALL, HEAD_COACH, ASSISTANT, MEDICAL, ATHLETE),
  /** Who needs care today; growing; opening a hold. */
  CARE(PhoneRights.ALL, HEAD_COACH, ASSISTANT, MEDICAL),
  /** Entering the clinician who ended a hold. */
  CLEAR(PhoneRights.ALL, HEAD_COACH, MEDICAL),
  /** Changing the squad, the plan and what is looked for. */
  TEACH(PhoneRights.ALL, HEAD_COACH, ASSISTANT),
  /** Films and what is read from them. */
  FILM(PhoneRights.ALL, HEAD_COACH, ASSISTANT),
  /** Settings, files of everybody, erasing. */
  LEAD(PhoneRights.ALL, HEAD_COACH),
  /** One's own paired phones. */
  PHONES(null, HEAD_COACH, ASSISTANT),
  /** Accounts, backups, what was done. */
  CLUB(null, HEAD_COACH),
  /** Closing the program: nobody but the machine itself, where nobody else can reach the pages. */
  MACHINE(null);

  private final @Nullable PhoneRights phone;
  private final Set<Role> roles;

  /** @param phone what a paired phone needs; null if no phone is let in */
  Right(@Nullable PhoneRights phone, Role... roles) {
    this.phone = phone;
    this.roles = Set.of(roles);
  }

  /** Whether this role is let in; an {@link Role#ATHLETE} only to their own. */
  public boolean isIn(Role role) {
    return this == OPEN || roles.contains(role);
  }

  /** Whether a phone with these rights is let in, if its owner is. */
  public boolean isIn(PhoneRights rights) {
    return this == OPEN || (phone != null && (phone == PhoneRights.LOG || rights == PhoneRights.ALL));
  }
}
