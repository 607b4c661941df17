package boundwright.track;

import boundwright.quantity.RefusedException;
import java.util.Set;

/**
 * Athletes who are called together; an athlete may be in any number of groups.
 *
 * @param id number in the store, 0 before it is stored
 * @param name as called at the track, 1 to 40 characters
 * @param members the athletes' numbers
 */
public record Group(long id, String name, Set<Long> members) {
  /** Takes a copy; refuses a name that is empty or too long. */
  public Group {
    name = name.strip().replaceAll("\\s+", " ");
    if (name.isEmpty() || name.length() > 40) {
      throw new RefusedException("A group's name has 1 to 40 characters; this one has " + name.length() + ". Use the name called at the track.");
    }
    members = Set.copyOf(members);
  }
}
