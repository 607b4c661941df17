package boundwright.track;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Who is here. Everybody is until they are tapped away, because most of a squad comes to most sessions; whoever logs a rep on a day is
 * here on it. Who is away gets no tape and no line on the card, and is not in the running order.
 */
public final class Attendance {
  private final AthleteRepository athletes;
  private final RollRepository roll;
  private final Clock clock;

  /** Works on these; {@code clock} tells which day it is. */
  public Attendance(AthleteRepository athletes, RollRepository roll, Clock clock) {
    this.athletes = athletes;
    this.roll = roll;
    this.clock = clock;
  }

  /**
   * The squad of a day.
   *
   * @param all everybody, by name
   * @param away numbers of those who are not here
   */
  public record Roll(List<Athlete> all, Set<Long> away) {
    /** Takes copies. */
    public Roll {
      all = List.copyOf(all);
      away = Set.copyOf(away);
    }

    /** Whether an athlete is here. */
    public boolean here(Athlete athlete) {
      return !away.contains(athlete.id());
    }

    /** Those who are here, by name. */
    public List<Athlete> here() {
      return all.stream().filter(this::here).toList();
    }

    /** {@code 12 of 60 here}, or {@code all 60 here}. */
    public String said() {
      int here = here().size();
      return here == all.size() ? "all " + here + " here" : here + " of " + all.size() + " here";
    }
  }

  /** Today's roll. */
  public Roll today() {
    return on(LocalDate.now(clock));
  }

  /** The roll of a day. */
  public Roll on(LocalDate day) {
    List<Athlete> all = athletes.all();
    Set<Long> away = new HashSet<>(roll.away(day));
    away.retainAll(new HashSet<>(all.stream().map(Athlete::id).toList()));
    return new Roll(all, away);
  }

  /** Those who are here today, by name: who gets a tape and a line on the card. */
  public List<Athlete> here() {
    return today().here();
  }

  /** Keeps who is here on a day; everybody else is away. */
  public void keepHere(LocalDate day, Set<Long> here) {
    Set<Long> away = new HashSet<>();
    athletes.all().stream().map(Athlete::id).filter(id -> !here.contains(id)).forEach(away::add);
    roll.keepAway(day, away);
  }

  /** All groups by name. */
  public List<Group> groups() {
    return roll.groups();
  }

  /** Keeps a group: a new one if its number is 0; refuses a name that another group has. */
  public Group keep(Group group) {
    return roll.keep(group);
  }

  /** Takes a group out; its athletes stay. */
  public void removeGroup(long id) {
    roll.removeGroup(id);
  }

  /** The names of the groups that an athlete is in. */
  public static List<String> groupsOf(Athlete athlete, List<Group> groups) {
    List<String> out = new ArrayList<>();
    for (Group g : groups) {
      if (g.members().contains(athlete.id())) {
        out.add(g.name());
      }
    }
    return out;
  }
}
