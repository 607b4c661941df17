package boundwright.track;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/** Where it is kept who is away on a day and who is in which group. Writes are on disk when they return. */
public interface RollRepository {
  /** The numbers of those who are away on a day. */
  Set<Long> away(LocalDate day);

  /** Keeps who is away on a day, in place of what was kept of it. */
  void keepAway(LocalDate day, Set<Long> away);

  /** All groups by name. */
  List<Group> groups();

  /** Keeps a group: a new one if its number is 0. Refuses a name that another group has. */
  Group keep(Group group);

  /** Takes a group out; its athletes stay. */
  void removeGroup(long id);
}
