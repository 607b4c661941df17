package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.footfall.Sequence;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LegCounts;
import boundwright.load.account.LegWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.RelativeImpact;
import boundwright.load.rating.RatedWeek;
import boundwright.load.rating.SessionRating;
import boundwright.picture.LoadPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.RefusedException;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.athlete.GuardDesk;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What the legs of one athlete did, and what else they did beside reps and jumps. */
public final class LoadHandler {
  private static final int WEEKS = 6;
  private static final int MONTH_DAYS = 28;
  private static final int WEEK_DAYS = 7;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public LoadHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "added" -> "Counted.";
          case "removed" -> "Taken out.";
          case "week" -> "Kept: days are compared with it until the log is long enough.";
          case "season" -> "The part of the year is kept.";
          case "again" -> "That was kept already and was not kept twice.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Adds other work. */
  public void add(Context ctx) {
    change(
        ctx,
        "work",
        a -> {
          OtherWork.Kind kind = Form.oneOf(OtherWork.Kind.class, "kind of work", Form.text(ctx, "kind"));
          // two taps: the amount may come from a button of its own, with the grade behind a stroke
          String[] tapped = Form.text(ctx, "tap").split("/", 2);
          String amount = tapped[0].isEmpty() ? Form.text(ctx, "amount") : tapped[0];
          String grade = tapped.length == 2 ? tapped[1] : Form.text(ctx, "grade");
          bench
              .load()
              .add(
                  new OtherWork(
                      0, a.id(), Form.date(Form.text(ctx, "date"), today()), kind, Form.number("amount", amount),
                      grade.isEmpty() ? 0 : Form.number("height or rating", grade)));
          return "added";
        });
  }

  /** Takes other work out. */
  public void remove(Context ctx) {
    change(
        ctx,
        "remove",
        a -> {
          String number = ctx.pathParam("number");
          if (!number.matches("\\d{1,18}") || bench.load().removeOtherWork(a.id(), Long.parseLong(number)).isEmpty()) {
            throw new RefusedException("Work number " + number + " is not in this athlete's list. Nothing was changed. Load the page again.");
          }
          return "removed";
        });
  }

  /** Keeps what the coach says of the weeks before the log. */
  public void lastWeek(Context ctx) {
    change(
        ctx,
        "week",
        a -> {
          boolean fresh = Form.text(ctx, "new").equals("yes");
          int contacts = fresh ? 0 : Form.whole("number of contacts", Form.text(ctx, "contacts"));
          bench.load().keep(a.id(), new LastWeek(today(), contacts));
          return "week";
        });
  }

  /** Keeps from when a part of the year holds for this athlete, or gives them back to the squad's. */
  public void season(Context ctx) {
    change(
        ctx,
        "season",
        a -> {
          LocalDate from = Form.anyDate(Form.text(ctx, "from"));
          SeasonStart start = new SeasonStart(a.id(), from, Form.oneOf(Season.class, "part of the year", Form.text(ctx, "season")));
          if (Form.text(ctx, "action").equals("remove")) {
            bench.load().remove(start);
          } else {
            bench.load().keep(start);
          }
          return "season";
        });
  }

  /** A change that can be refused; answers what the page then says. */
  private interface Change {
    String make(Athlete athlete);
  }

  private void change(Context ctx, String form, Change change) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      String token = Entries.token(ctx, "enter it again");
      String[] said = {"again"};
      bench.once(
          token + ctx.path() + Form.text(ctx, "kind") + Form.text(ctx, "tap"),
          () -> {
            said[0] = change.make(athlete);
            return 0;
          });
      ctx.redirect("/athlete/" + athlete.id() + "/load?said=" + said[0], HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, form, String.valueOf(e.getMessage())));
    }
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    LocalDate today = today();
    GuardLimits limits = bench.care().guard().limits();
    ContactWeights weights = bench.loadDesk().weights(athlete, today);
    History history = bench.loadDesk().history(athlete, LegWeek.daysNeeded(WEEKS));
    List<DayLoad> days = history.days();
    List<LegWeek> weeks = LegWeek.of(history, today, WEEKS, weights);
    Band session = bench.loadDesk().session(athlete);
    List<SessionRating> ratings = bench.care().ratings(athlete.id(), today.minusDays(MONTH_DAYS * 2L));
    List<DayLoad> week = within(days, today, WEEK_DAYS);
    List<DayLoad> month = within(days, today, MONTH_DAYS);
    List<SeasonStart> seasons = bench.load().seasons();
    LoadView view =
        new LoadView(
            athlete,
            bench.loadDesk().day(athlete),
            LoadPicture.of(weeks, days, session, limits, RunwayStrip.Width.WIDE),
            LoadPicture.of(weeks, days, session, limits, RunwayStrip.Width.NARROW),
            LegCounts.of(week),
            LegCounts.of(month),
            LoadView.Account.of(week, weights),
            LoadView.Account.of(month, weights),
            bench.load().otherWork(athlete.id(), today.minusDays(WEEK_DAYS - 1L)),
            bench.load().lastWeeks().get(athlete.id()),
            SeasonStart.on(seasons, athlete.id(), today).map(Season::label).orElse("not set"),
            seasons.stream().filter(s -> s.athleteId() != null && s.athleteId() == athlete.id()).toList(),
            impacts(athlete, weights.scale().times(), today),
            ratings.isEmpty() ? null : RatedWeek.of(ratings, days, today, 1).get(0),
            RatedWeek.weightedMean(ratings, today, WEEK_DAYS).orElse(0.0),
            RatedWeek.weightedMean(ratings, today, MONTH_DAYS).orElse(0.0),
            written,
            gate.fresh(),
            today);
    pages.show(ctx, written.status(), "watching/load", "Load of " + athlete.name(), "squad", view);
  }

  private static List<DayLoad> within(List<DayLoad> days, LocalDate today, int n) {
    return days.stream().filter(d -> !d.date().isAfter(today) && d.date().isAfter(today.minusDays(n))).toList();
  }

  private List<LoadView.Impact> impacts(Athlete athlete, ContactTimes times, LocalDate today) {
    FlightModel model = bench.logbook().model(athlete);
    Surface surface = bench.settings().settings().facility().surface();
    List<LoadView.Impact> out = new ArrayList<>();
    for (Drill drill : bench.settings().plan().drills()) {
      int steps = GuardDesk.steps(bench, athlete, drill);
      Sequence sequence = drill.sequence();
      Forecast forecast = model.forecast(sequence, steps, surface, today);
      List<Double> figures = RelativeImpact.perContact(forecast, bench.logbook().runUp(athlete, steps), times);
      List<LoadView.Contact> contacts = new ArrayList<>();
      for (int c = 0; c < figures.size(); c++) {
        contacts.add(new LoadView.Contact(c + 1, sequence.contacts().get(c), Figures.fixed(figures.get(c), 1)));
      }
      out.add(new LoadView.Impact(sequence.text(), Figures.fromSteps(steps), List.copyOf(contacts)));
    }
    return List.copyOf(out);
  }
}
