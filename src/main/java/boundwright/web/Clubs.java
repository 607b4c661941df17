package boundwright.web;

import boundwright.account.Club;
import boundwright.store.Workbench;
import java.util.LinkedHashMap;
import java.util.Map;

/** The open stores of the clubs other than the first, which whoever started the server opened. */
final class Clubs implements AutoCloseable {
  private final Workbench first;
  private final boolean films;
  private final Map<Long, Workbench> others = new LinkedHashMap<>();
  private final Map<Long, AutoCloseable> backups = new LinkedHashMap<>();

  /** @param films whether their films are read here */
  Clubs(Workbench first, boolean films) {
    this.first = first;
    this.films = films;
  }

  /** The store of a club; opened, and its films and backups begun, when it is first asked for. */
  synchronized Workbench of(long club) {
    if (club == Club.FIRST) {
      return first;
    }
    Workbench known = others.get(club);
    if (known == null) {
      known = first.club(club);
      others.put(club, known);
      if (films) {
        known.sessions().start();
        known.clips().start();
      }
      backups.put(club, known.backups().byItself());
    }
    return known;
  }

  @Override
  public synchronized void close() {
    backups.values().forEach(Clubs::shut);
    others.values().forEach(Workbench::close);
    others.clear();
    backups.clear();
  }

  private static void shut(AutoCloseable one) {
    try {
      one.close();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
