package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.footfall.Sequence;
import boundwright.load.Band;
import boundwright.load.DayLoad;
import boundwright.load.Guard;
import boundwright.load.GuardSettings;
import boundwright.load.LegCounts;
import boundwright.load.LegWeek;
import boundwright.load.RatedWeek;
import boundwright.load.RelativeImpact;
import boundwright.load.SessionRating;
import boundwright.picture.LoadPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.athlete.GuardDesk;
import boundwright.web.page.Addresses;
import boundwright.web.page.Figures;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What the legs of one athlete did, described. */
public final class LoadHandler {
  private static final int WEEKS = 6;
  private static final int MONTH_DAYS = 28;
  private static final int WEEK_DAYS = 7;

  private final Workbench bench;
  private final Pages pages;
  private final GuardDesk guard;

  public LoadHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.guard = new GuardDesk(bench);
  }

  /** The page. */
  public void show(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    LocalDate today = LocalDate.now(bench.clock());
    GuardSettings settings = bench.care().guard();
    List<DayLoad> days = DayLoad.byDay(bench.reps().since(athlete.id(), today.minusDays(LegWeek.daysNeeded(WEEKS))));
    List<LegWeek> weeks = LegWeek.of(days, today, WEEKS, settings.limits());
    List<DayLoad> past = days.stream().filter(d -> d.date().isBefore(today)).toList();
    Band session =
        new Guard(settings.limits(), settings.season()).session(athlete.level(), bench.care().care(athlete.id(), today), past, today);
    List<SessionRating> ratings = bench.care().ratings(athlete.id(), today.minusDays(MONTH_DAYS * 2L));
    LoadView view =
        new LoadView(
            athlete,
            bench.loadDesk().today(athlete, guard.restOfPlan(athlete)),
            LoadPicture.of(weeks, days, session, RunwayStrip.Width.WIDE),
            LoadPicture.of(weeks, days, session, RunwayStrip.Width.NARROW),
            LegCounts.of(within(days, today, WEEK_DAYS)),
            LegCounts.of(within(days, today, MONTH_DAYS)),
            impacts(athlete, today),
            ratings.isEmpty() ? null : RatedWeek.of(ratings, days, today, 1).get(0),
            RatedWeek.weightedMean(ratings, today, WEEK_DAYS).orElse(0.0),
            RatedWeek.weightedMean(ratings, today, MONTH_DAYS).orElse(0.0));
    pages.show(ctx, 200, "watching/load", "Load of " + athlete.name(), "squad", view);
  }

  private static List<DayLoad> within(List<DayLoad> days, LocalDate today, int n) {
    return days.stream().filter(d -> !d.date().isAfter(today) && d.date().isAfter(today.minusDays(n))).toList();
  }

  private List<LoadView.Impact> impacts(Athlete athlete, LocalDate today) {
    FlightModel model = bench.logbook().model(athlete);
    Surface surface = bench.settings().settings().facility().surface();
    List<LoadView.Impact> out = new ArrayList<>();
    for (Drill drill : bench.settings().plan().drills()) {
      int steps = GuardDesk.steps(bench, athlete, drill);
      Sequence sequence = drill.sequence();
      Forecast forecast = model.forecast(sequence, steps, surface, today);
      List<Double> figures = RelativeImpact.perContact(forecast, bench.logbook().runUp(athlete, steps));
      List<LoadView.Contact> contacts = new ArrayList<>();
      for (int c = 0; c < figures.size(); c++) {
        contacts.add(new LoadView.Contact(c + 1, sequence.contacts().get(c), Figures.fixed(figures.get(c), 1)));
      }
      out.add(new LoadView.Impact(sequence.text(), Figures.fromSteps(steps), List.copyOf(contacts)));
    }
    return List.copyOf(out);
  }
}
