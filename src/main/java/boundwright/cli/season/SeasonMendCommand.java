package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.mend.Happened;
import boundwright.season.mend.Mender;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Mends a plan after something happened. */
@Command(
    name = "mend",
    description = {
      "Puts a plan right after something happened, by the fewest days, and lists what changes.",
      "Example: boundwright season mend season.json plan.json --today 2027-03-02 --missed \"Mabel Cordgrass:2027-03-01\" --out plan2.json%n"
    })
final class SeasonMendCommand implements Callable<Integer> {
  private static final long SEARCH_NS = 1_200_000_000L;

  private final BoundwrightCommand top;

  @Mixin private SeasonFiles files = new SeasonFiles();

  @Parameters(index = "0", paramLabel = "FILE", description = "The season as it is now.")
  private String file = "";

  @Parameters(index = "1", paramLabel = "PLAN", description = "The plan that holds.")
  private String plan = "";

  @Option(names = "--today", paramLabel = "DATE", description = "First day that may be changed. Default: today.")
  private @Nullable String today;

  @Option(names = "--missed", paramLabel = "NAME:DATE", description = "A session that was not done, before today.")
  private List<String> missed = new ArrayList<>();

  @Option(names = "--held", paramLabel = "NAME:FROM..TO", description = "Somebody who is held or away.")
  private List<String> held = new ArrayList<>();

  @Option(names = "--closed", paramLabel = "PLACE:DATE", description = "A place that is closed, as by rain.")
  private List<String> closed = new ArrayList<>();

  @Mixin private PlanOut out = new PlanOut();

  SeasonMendCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    out.check(s);
    return files.with(
        top, file,
        asked -> {
          SeasonPlan before = SeasonFiles.plan(s, plan);
          LocalDate day = Choices.anyDay(today, s);
          SeasonInput season = asked.season();
          for (String c : closed) {
            season = Happened.closed(season, before(c), Choices.anyDay(after(c), s));
          }
          for (String h : held) {
            season = Happened.away(season, member(season, before(h)).id(), new Away(span(after(h), s), Away.Why.HELD));
          }
          Done done = asked.before(day, before);
          for (String m : missed) {
            done = done.without(member(season, before(m)).id(), Choices.anyDay(after(m), s));
          }
          long most = System.nanoTime() + SEARCH_NS;
          Mender.Mended mended = new Mender(season, Happened.climbs(before, season), before, done, () -> System.nanoTime() > most).mend();
          PlanAnswer.Mended answer = new PlanAnswer.Mended(PlanAnswer.changed(mended.differences()), PlanAnswer.refused(mended.plan(), mended.refused()), mended.left());
          boolean right = answer.refused().isEmpty() && answer.tapersMissed() == 0;
          Path to = right ? out.write(s, mended.plan()) : null;
          if (top.json()) {
            Json.print(s.out(), answer);
          } else {
            print(s, answer, mended, to);
          }
          return right ? 0 : 2;
        });
  }

  private static void print(Surroundings s, PlanAnswer.Mended a, Mender.Mended mended, @Nullable Path to) {
    if (a.differences().isEmpty()) {
      s.out().println("Nothing has to change.");
    }
    mended.differences().forEach(d -> s.out().println(d.date() + "  " + d.athlete() + ": " + Told.day(d.before()) + " -> " + Told.day(d.after())));
    a.refused().forEach(r -> s.out().println("  " + r.athlete() + ", " + r.date() + ": " + r.said()));
    if (a.tapersMissed() > 0) {
      s.out().println("A taper before a main meet is missed by " + a.tapersMissed() + " standing-bound contacts whatever is changed. Give up a meet before it, or lessen the cut in the season's rules.");
    }
    if (to != null) {
      s.out().println("Written to " + to.getFileName() + ".");
    }
  }

  /** The athlete of a season called so. */
  static Member member(SeasonInput season, String name) {
    return season.squad().stream()
        .filter(m -> m.name().equalsIgnoreCase(name))
        .findFirst()
        .orElseThrow(() -> new RefusedException("Nobody in the season is called '" + name + "'. Write the name as in its file."));
  }

  private static String before(String pair) {
    int colon = pair.lastIndexOf(':');
    if (colon < 1) {
      throw new RefusedException("'" + pair + "' has no colon between the name and the date. Write for example \"Mabel Cordgrass:2027-03-01\".");
    }
    return pair.substring(0, colon).strip();
  }

  private static String after(String pair) {
    return pair.substring(pair.lastIndexOf(':') + 1).strip();
  }

  private static Span span(String text, Surroundings s) {
    int dots = text.indexOf("..");
    LocalDate from = Choices.anyDay(dots < 0 ? text : text.substring(0, dots), s);
    return new Span(from, dots < 0 ? from : Choices.anyDay(text.substring(dots + 2), s));
  }
}
