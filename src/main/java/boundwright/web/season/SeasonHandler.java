package boundwright.web.season;

import boundwright.athlete.Athlete;
import boundwright.card.CardPdf;
import boundwright.card.SeasonSheets;
import boundwright.demo.DemoSeason;
import boundwright.demo.DemoSquad;
import boundwright.picture.season.SeasonDrawing;
import boundwright.picture.season.SeasonPicture.Size;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.CalendarKey;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.calendar.CalendarAddresses;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.sheet.SeasonOverview;
import boundwright.season.sheet.WeekSheet;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import boundwright.web.door.Reach;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/** A season on one page, a week of it, and both on paper. */
public final class SeasonHandler {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private final Workbench bench;
  private final Pages pages;
  private final Reach reach;
  private final SeasonDeeds deeds;
  private final SeasonDesk desk;
  private final CalendarAddresses addresses;
  private final WeekHandler weeks;

  /** @param random a generator that cannot be guessed */
  public SeasonHandler(Workbench bench, Pages pages, Reach reach, SeasonDeeds deeds, RandomGenerator random) {
    this.bench = bench;
    this.pages = pages;
    this.reach = reach;
    this.deeds = deeds;
    this.desk = deeds.desk();
    this.addresses = new CalendarAddresses(bench.seasons(), bench.clock(), random);
    this.weeks = new WeekHandler(bench, pages, deeds);
  }

  /** The season asked for, or that of today. */
  public void show(Context ctx) {
    page(ctx, 200, Form.has(ctx, "season") ? asked(ctx) : desk.current().orElse(null), null, "", said(Form.text(ctx, "done")));
  }

  private static String said(String done) {
    if (done.matches("version-\\d{1,9}")) {
      return "Version " + done.substring("version-".length()) + " is published.";
    }
    return done.equals("file") ? "The season is kept." : done.equals("there") ? "It is taken back. Days that were cleared for it stay free until the open days are planned anew." : done.equals("shut") ? "That address opens nothing any more." : "";
  }

  /** The page with why a deed was refused, and the form as it was sent. */
  void refused(Context ctx, Kept kept, String refused, Sent sent) {
    pages.show(ctx, 422, "season/season", "Season", "season", view(kept, null, refused, "", sent));
  }

  /** Takes the file of a season. Its athletes are found by their names. */
  public void file(Context ctx) throws IOException {
    UploadedFile file = ctx.uploadedFile("file");
    if (file == null || file.size() == 0) {
      page(ctx, 422, desk.current().orElse(null), null, "No file was chosen, or it is empty. Choose the file of a season.", "");
      return;
    }
    try (InputStream in = file.content()) {
      long id = desk.keep(SeasonFile.read(in.readAllBytes(), bench.care().guard(), (name, written) -> numberOf(name)));
      ctx.redirect("/season?season=" + id + "&done=file", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, 422, desk.current().orElse(null), null, String.valueOf(e.getMessage()), "");
    }
  }

  private long numberOf(String name) {
    return bench.athletes().byName(name).map(Athlete::id).orElseThrow(() -> new RefusedException("nobody in the squad is called so. Add them to the squad first, or correct the name."));
  }

  /** An invented season as a file to begin with. */
  public void example(Context ctx) {
    ctx.contentType("application/json; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"season-example.json\"");
    ctx.result(SeasonFile.write(DemoSeason.from(LocalDate.now(bench.clock()), bench.care().guard()), bench.care().guard(), DemoSeason.NOTE).getBytes(StandardCharsets.UTF_8));
  }

  /** The season as a file. */
  public void saved(Context ctx) {
    Kept kept = asked(ctx);
    ctx.contentType("application/json; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"season-" + Form.fileName(kept.name()) + ".json\"");
    ctx.result(SeasonFile.write(desk.input(kept.id()), bench.care().guard(), "").getBytes(StandardCharsets.UTF_8));
  }

  /** The wall plan. */
  public void wall(Context ctx) {
    Kept kept = asked(ctx);
    SeasonSheets.Wall size = Form.oneOf(ctx, "paper", SeasonSheets.Wall.class, SeasonSheets.Wall.A3);
    Pages.pdf(ctx, "wall-" + Form.fileName(kept.name()) + "-" + size.name().toLowerCase(Locale.ROOT), new SeasonSheets(CardPdf.shared()).wall(overview(desk.input(kept.id()), plan(kept)), size, note()));
  }

  /** A week on the screen. */
  public void week(Context ctx) {
    weeks.show(ctx, Form.has(ctx, "season") ? asked(ctx) : desk.current().orElseThrow(() -> new Turned(404, "There is no season yet. The coach keeps one under Season.")));
  }

  /** A week on paper. */
  public void weekPdf(Context ctx) {
    Kept kept = asked(ctx);
    LocalDate of = of(ctx, kept);
    Pages.pdf(ctx, "week-" + of, new SeasonSheets(CardPdf.shared()).week(WeekSheet.of(desk.input(kept.id()), plan(kept), of), note()));
  }

  /** A new address for a calendar; the one before opens nothing from now on. It is shown in the answer and nowhere again. */
  public void renew(Context ctx) {
    Kept kept = asked(ctx);
    @Nullable Athlete athlete = whose(ctx);
    String secret = addresses.renew(kept.id(), athlete == null ? null : athlete.id());
    String base = reach.urls().isEmpty() ? reach.own() : reach.urls().get(0);
    page(ctx, 200, kept, new SeasonView.Shown(athlete == null ? "the squad" : athlete.name(), base + "/calendar/" + secret + ".ics", reach.urls().isEmpty()), "", "");
  }

  /** Shuts a calendar. */
  public void shut(Context ctx) {
    Kept kept = asked(ctx);
    @Nullable Athlete athlete = whose(ctx);
    bench.seasons().dropSecret(kept.id(), athlete == null ? null : athlete.id());
    ctx.redirect("/season?season=" + kept.id() + "&done=shut", HttpStatus.SEE_OTHER);
  }

  private @Nullable Athlete whose(Context ctx) {
    String number = Form.text(ctx, "athlete");
    return number.isEmpty() || number.equals("0") ? null : Addresses.athlete(number, bench);
  }

  /** The season whose number was sent. */
  public Kept asked(Context ctx) {
    String number = Form.text(ctx, "season");
    return (number.matches("\\d{1,18}") ? bench.seasons().byId(Long.parseLong(number)) : Optional.<Kept>empty())
        .orElseThrow(() -> new Turned(404, "No season has the number '" + number + "'. Choose one under Season."));
  }

  private SeasonPlan plan(Kept kept) {
    return bench.seasons().published(kept.id()).orElseThrow(() -> new Turned(404, "No plan of " + kept.name() + " is published yet."));
  }

  private LocalDate of(Context ctx, Kept kept) {
    return WeekHandler.of(ctx, kept, LocalDate.now(bench.clock()));
  }

  static LocalDate within(Kept kept, LocalDate day) {
    return day.isBefore(kept.first()) ? kept.first() : day.isAfter(kept.last()) ? kept.last() : day;
  }

  private String note() {
    return bench.invented() ? DemoSquad.NOTE : "";
  }

  private SeasonOverview overview(SeasonInput season, SeasonPlan plan) {
    LocalDate today = LocalDate.now(bench.clock());
    List<Athlete> squad = season.squad().stream().map(Member::athlete).toList();
    return SeasonOverview.of(
        season, plan, bench.workLog().since(squad, season.first()), m -> bench.loadDesk().weights(m.athlete(), today), today);
  }

  private void page(Context ctx, int status, @Nullable Kept kept, SeasonView.@Nullable Shown shown, String refused, String said) {
    pages.show(ctx, status, "season/season", "Season", "season", view(kept, shown, refused, said, Sent.NOTHING));
  }

  private SeasonView view(@Nullable Kept kept, SeasonView.@Nullable Shown shown, String refused, String said, Sent sent) {
    if (kept == null) {
      return new SeasonView(null, List.of(), null, null, List.of(), null, refused, said);
    }
    SeasonInput season = desk.input(kept.id());
    List<SeasonView.Other> others =
        bench.seasons().all().stream().filter(k -> k.id() != kept.id()).map(k -> new SeasonView.Other(k.id(), k.name() + ", from " + DAY.format(k.first()))).toList();
    Optional<SeasonPlan> plan = bench.seasons().published(kept.id());
    List<String> meets = new ArrayList<>();
    season.meets().forEach(m -> meets.add((meets.size() + 1) + " " + m.name() + ", " + DAY.format(m.date())));
    SeasonView.Head head =
        new SeasonView.Head(
            kept.id(), kept.name(), DAY.format(kept.first()), DAY.format(kept.last()), Notes.counted(season.squad().size(), "athlete"), meets,
            within(kept, LocalDate.now(bench.clock())), kept.changedSince() ? kept.published() : 0);
    return new SeasonView(head, others, plan.map(p -> drawn(season, p)).orElse(null), deeds.view(kept, season, plan.orElse(null), sent), plan.isPresent() ? calendars(season, kept.id()) : List.of(), shown, refused, said);
  }

  private SeasonView.Planned drawn(SeasonInput season, SeasonPlan plan) {
    SeasonOverview overview = overview(season, plan);
    return new SeasonView.Planned(
        plan.version(),
        Math.round(SeasonDrawing.todayX(overview, Size.SCREEN)),
        SeasonDrawing.head(overview, Size.SCREEN),
        overview.rows().stream().map(r -> new SeasonView.Row(r.id(), r.athlete(), String.valueOf(Math.round(r.most())), SeasonDrawing.row(overview, r, Size.SCREEN))).toList());
  }

  private List<SeasonView.CalendarRow> calendars(SeasonInput season, long id) {
    List<CalendarKey> keys = bench.seasons().secrets(id);
    List<SeasonView.CalendarRow> out = new ArrayList<>(List.of(new SeasonView.CalendarRow(0, "The squad", since(keys, null))));
    season.squad().forEach(m -> out.add(new SeasonView.CalendarRow(m.id(), m.name(), since(keys, m.id()))));
    return out;
  }

  private String since(List<CalendarKey> keys, @Nullable Long athlete) {
    return keys.stream()
        .filter(k -> athlete == null ? k.athleteId() == null : athlete.equals(k.athleteId()))
        .map(k -> DAY.format(k.made().atZone(bench.clock().getZone())))
        .findFirst()
        .orElse("");
  }
}
