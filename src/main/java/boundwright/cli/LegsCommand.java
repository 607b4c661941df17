package boundwright.cli;

import boundwright.approach.legs.LegLook;
import boundwright.athlete.Athlete;
import boundwright.meet.EventsAnswer;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.store.Workbench;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** What was measured in the two events and off each leg. */
@Command(
    name = "legs",
    description = {
      "What was measured in the two events and off each leg in the last year, growth and run-up taken out: described, no",
      "event and no leg is recommended.",
      "Example: boundwright legs --athlete NAME%n"
    })
final class LegsCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Mixin private UnitOption unit = new UnitOption();

  LegsCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code legs --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(String athlete, List<Marks> marks, boolean comparesEvents, List<Leg> legs, String said) {
    static Answer of(Athlete who, EventsAnswer a) {
      return new Answer(
          who.name(),
          a.marks().stream().map(Marks::of).toList(),
          a.comparesEvents(),
          a.legs().stream().map(Leg::of).toList(),
          a.words());
    }
  }

  /** The marks of an event. */
  record Marks(
      String event, int count, double best_m, String bestOn, @Nullable String bestMeet, @Nullable Integer bestSteps, @Nullable Integer points) {
    static Marks of(EventsAnswer.Marks m) {
      EventsAnswer.Mark best = m.best();
      return new Marks(
          m.event().label(), m.count(), Json.length(best.distance_m()), best.date().toString(), best.meet(), best.steps(), m.points());
    }
  }

  /** One measure, right against left. */
  record Leg(
      String measure, String unit, int right, int left, @Nullable Points rightLessLeft, @Nullable Points per30Days, boolean told, String said) {
    static Leg of(LegLook l) {
      return new Leg(
          l.what().name().toLowerCase(Locale.ROOT),
          l.what().unit(),
          l.right(),
          l.left(),
          Points.orNull(l.rightLess_left()),
          Points.orNull(l.per30Days()),
          l.told(),
          l.words());
    }
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      EventsAnswer a = bench.eventsDesk().answer(who, bench.people().person(who.id()), s.today());
      if (top.json()) {
        Json.print(s.out(), Answer.of(who, a));
      } else {
        print(s, a, unit.in(bench));
      }
      return 0;
    }
  }

  private static void print(Surroundings s, EventsAnswer a, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    for (EventsAnswer.Marks m : a.marks()) {
      text.line(
          Notes.capital(m.event().label()),
          in.write(m.best().distance_m()) + " " + m.best().from() + "; best of " + Notes.counted(m.count(), "mark") + " kept"
              + (a.comparesEvents() && m.points() != null ? ", " + m.points() + " points of that event's table" : ""));
    }
    if (a.legs().isEmpty()) {
      text.wrapped("Legs", "The data cannot tell: no flight was measured at both ends in the last year, and no long jump with its run-up.");
    }
    for (LegLook l : a.legs()) {
      text.wrapped("Leg", Notes.capital(l.words()));
    }
    text.wrapped("", a.words());
  }
}
