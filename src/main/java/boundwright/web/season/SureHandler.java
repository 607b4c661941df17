package boundwright.web.season;

import boundwright.picture.season.ChanceDrawing;
import boundwright.quantity.RefusedException;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.Venue;
import boundwright.season.chance.Chances;
import boundwright.season.chance.SeasonSimulator;
import boundwright.season.desk.SimulationDesk;
import boundwright.season.desk.SimulationDesk.Known;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says how sure the published plan is: simulated seasons in the background, and their answer. */
public final class SureHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final String PART = "season/surepart";

  private final Pages pages;
  private final SeasonHandler season;
  private final SeasonDeeds deeds;
  private final SimulationDesk desk;

  public SureHandler(Pages pages, SeasonHandler season, SeasonDeeds deeds) {
    this.pages = pages;
    this.season = season;
    this.deeds = deeds;
    this.desk = deeds.simulations();
  }

  /** Registers its addresses. */
  public void add(RoutesConfig routes) {
    routes.get("/season/sure", this::show);
    routes.post("/season/sure", this::start);
    routes.post("/season/sure/stop", this::stop);
  }

  /** The part of the page that asks for it, a page of its own where there are no scripts. */
  void show(Context ctx) {
    page(ctx, 200, season.asked(ctx), "");
  }

  /** Begins a simulation. */
  void start(Context ctx) {
    Kept kept = season.asked(ctx);
    try {
      List<String> asked = new ArrayList<>();
      for (String field : List.of("hour", "without")) {
        if (!Form.text(ctx, field).isEmpty()) {
          asked.add(field + ":" + Form.text(ctx, field));
        }
      }
      desk.start(kept.id(), SeasonSimulator.USUAL_SEASONS, asked);
      ctx.redirect("/season/sure?season=" + kept.id(), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, 422, kept, String.valueOf(e.getMessage()));
    }
  }

  /** Ends it with what is known. */
  void stop(Context ctx) {
    Kept kept = season.asked(ctx);
    desk.stop(kept.id());
    ctx.redirect("/season/sure?season=" + kept.id(), HttpStatus.SEE_OTHER);
  }

  private void page(Context ctx, int status, Kept kept, String refused) {
    pages.show(ctx, status, Pages.isPartial(ctx) ? PART : "season/sure", "How sure", "season", view(kept, refused));
  }

  private SureView view(Kept kept, String refused) {
    SeasonInput input = deeds.desk().input(kept.id());
    LocalDate today = deeds.desk().today();
    SimulationDesk.Progress p = desk.of(kept.id()).orElse(null);
    boolean going = p != null && p.failed().isEmpty();
    String failed = !refused.isEmpty() ? refused : p == null ? "" : p.failed();
    return new SureView(
        kept.id(), kept.name(), going && p != null ? new SureView.Running(p.over(), p.asked()) : null, failed, hours(input), meets(input, today),
        desk.known(kept.id()).map(SureHandler::answer).orElse(null));
  }

  /** Days on which a place is not open yet, on days on which somebody trains. */
  private static List<DeedsView.Pick> hours(SeasonInput input) {
    List<DeedsView.Pick> out = new ArrayList<>();
    for (Venue v : input.venues()) {
      for (DayOfWeek d : DayOfWeek.values()) {
        if (!v.hours().containsKey(d) && input.squad().stream().anyMatch(m -> m.days().contains(d))) {
          out.add(new DeedsView.Pick(v.key() + ":" + d.name().toLowerCase(Locale.ROOT), v.name() + ", " + d.getDisplayName(TextStyle.FULL, Locale.ENGLISH)));
        }
      }
    }
    return out;
  }

  private static List<DeedsView.Pick> meets(SeasonInput input, LocalDate today) {
    List<DeedsView.Pick> out = new ArrayList<>();
    for (Meet meet : input.meets()) {
      boolean usual = input.squad().stream().anyMatch(m -> m.entry(meet).filter(i -> i == Entry.Importance.USUAL).isPresent());
      if (usual && !meet.date().isBefore(today)) {
        out.add(new DeedsView.Pick(meet.key(), meet.name()));
      }
    }
    return out;
  }

  private static SureView.Answer answer(Known known) {
    Chances c = known.chances();
    String of = c.seasons() < c.asked() ? " of " + number(c.asked()) : "";
    List<DeedsView.Line> sure =
        List.of(
            new DeedsView.Line("Days refused after mending", String.valueOf(c.refusedDays())),
            new DeedsView.Line("Meets given up, a season", String.format(Locale.ROOT, "%.2f", c.meetsGivenUp())),
            new DeedsView.Line("Main meets without the full taper, a season", String.format(Locale.ROOT, "%.2f", c.tapersMissed())),
            new DeedsView.Line("Each chance is known to about", String.format(Locale.ROOT, "± %.1f %%", 100 * c.error(0.5))));
    List<String> all = c.athletes().stream().map(SureHandler::by).distinct().toList();
    return new SureView.Answer(
        number(c.seasons()) + of + " simulated seasons, version " + known.version(), all.size() == 1 ? all.get(0) : "", sure, ChanceDrawing.load("The squad", c.squad()),
        c.athletes().stream().map(a -> athlete(a, all.size() > 1)).toList(), c.answers().stream().map(SureHandler::asked).toList());
  }

  private static List<Chances.Approach> last(Chances.Athlete a) {
    LocalDate day = a.approaches().get(a.approaches().size() - 1).date();
    return a.approaches().stream().filter(p -> p.date().equals(day)).toList();
  }

  private static String by(Chances.Athlete a) {
    return "By " + last(a).get(0).meet() + ", " + DAY.format(last(a).get(0).date());
  }

  private static SureView.Athlete athlete(Chances.Athlete a, boolean ownDay) {
    return new SureView.Athlete(
        a.name(), ownDay ? by(a) : "", Math.round(a.sessions()) + " sessions, " + Math.round(a.missed()) + " missed, " + Math.round(a.mended()) + " changed",
        ChanceDrawing.approaches(a.name(), last(a)), ChanceDrawing.load(a.name(), a.load()));
  }

  private static SureView.Asked asked(Chances.Answer a) {
    return new SureView.Asked(a.what().said(), a.squad().stream().map(SureHandler::line).toList());
  }

  private static DeedsView.Line line(Chances.Buys b) {
    boolean share = b.unit().equals("share");
    double much = share ? 100 : 1;
    String what = Character.toUpperCase(b.of().charAt(0)) + b.of().substring(1) + (share ? "" : ", " + b.unit());
    return new DeedsView.Line(what, String.format(Locale.ROOT, "%+.2f ± %.2f%s", much * b.mean(), much * b.error(), share ? " %" : ""));
  }

  private static String number(int n) {
    return String.format(Locale.ROOT, "%,d", n);
  }
}
