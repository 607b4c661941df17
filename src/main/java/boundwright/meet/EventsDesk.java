package boundwright.meet;

import boundwright.approach.aim.BoardLog;
import boundwright.approach.full.FullRunLog;
import boundwright.approach.legs.LegDesk;
import boundwright.athlete.Athlete;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.jump.Event;
import boundwright.jump.JumpLog;
import boundwright.jump.takeoff.LongJumpLog;
import boundwright.meet.EventsAnswer.Mark;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Describes what an athlete's marks in the two events and their legs show. */
public final class EventsDesk {
  private final BoardLog board;
  private final JumpLog jumps;
  private final LongJumpLog longJumps;
  private final FullRunLog distances;
  private final LegDesk legs;

  /** Works on these: every log in which a distance of an event stands. */
  public EventsDesk(BoardLog board, JumpLog jumps, LongJumpLog longJumps, FullRunLog distances, LegDesk legs) {
    this.board = board;
    this.jumps = jumps;
    this.longJumps = longJumps;
    this.distances = distances;
    this.legs = legs;
  }

  /**
   * The description.
   *
   * @param person what is known of them: the age decides what is shown, female or male the table of points
   */
  public EventsAnswer answer(Athlete athlete, Person person, LocalDate today) {
    OptionalInt age = person.age(today);
    boolean old = age.isPresent() && age.getAsInt() >= EventsAnswer.YOUNG;
    List<EventsAnswer.Marks> marks = new ArrayList<>();
    for (Event event : Event.values()) {
      List<Mark> all = kept(athlete, event);
      // of equal ones the first, which is that of a meet where there is one
      all.stream()
          .reduce((best, m) -> m.distance_m() > best.distance_m() ? m : best)
          .ifPresent(best -> marks.add(new EventsAnswer.Marks(event, all.size(), best, old ? points(event, person.sex(), best.distance_m()) : null)));
    }
    return new EventsAnswer(marks, legs.looks(athlete, today), age);
  }

  /** Every legal mark that is kept, those of meets first; fouls have none, and a jump measured from the toe alone has no distance from the line. */
  private List<Mark> kept(Athlete athlete, Event event) {
    List<List<Mark>> logs = new ArrayList<>();
    logs.add(board.inMeets(athlete.id(), event).stream().filter(b -> !b.foul()).flatMap(b -> mark(b.date(), b.distance_m(), b.meet())).toList());
    logs.add(board.gaps(athlete.id()).stream().filter(g -> g.event() == event && !g.foul()).flatMap(g -> mark(g.date(), g.distance_m(), null)).toList());
    if (event == Event.LONG_JUMP) {
      logs.add(
          longJumps.longJumps(athlete.id()).stream().filter(j -> legal(j.gap_m())).map(j -> new Mark(j.date(), j.distance_m(), j.steps(), null)).toList());
    } else {
      logs.add(
          jumps.jumps(athlete.id()).stream()
              .filter(j -> j.phases().knowsOfficial() && legal(j.phases().toeToBoard_m()))
              .map(j -> new Mark(j.date(), j.phases().official_m(), j.steps(), null))
              .toList());
      logs.add(distances.distances(athlete.id()).stream().map(d -> new Mark(d.date(), d.distance_m(), d.steps(), null)).toList());
    }
    List<Mark> out = new ArrayList<>();
    for (List<Mark> log : logs) {
      List<Mark> before = List.copyOf(out);
      log.stream().filter(m -> before.stream().noneMatch(m::isJump)).forEach(out::add);
    }
    return out;
  }

  private static Stream<Mark> mark(LocalDate date, @Nullable Double distance_m, @Nullable String meet) {
    return distance_m == null ? Stream.empty() : Stream.of(new Mark(date, distance_m, null, meet));
  }

  private static boolean legal(@Nullable Double gap_m) {
    return gap_m == null || gap_m >= 0;
  }

  private static @Nullable Integer points(Event event, @Nullable Sex sex, double best_m) {
    if (sex == null) {
      return null;
    }
    boolean female = sex == Sex.FEMALE;
    return event == Event.TRIPLE_JUMP
        ? (female ? Scoring.TRIPLE_JUMP_WOMEN : Scoring.TRIPLE_JUMP_MEN).points(best_m)
        : (female ? Scoring.LONG_JUMP_WOMEN : Scoring.LONG_JUMP_MEN).points(best_m);
  }
}
