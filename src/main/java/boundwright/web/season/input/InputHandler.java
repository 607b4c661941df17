package boundwright.web.season.input;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.desk.SeasonStart;
import boundwright.season.mend.Happened;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.season.input.InputView.Item;
import boundwright.web.season.input.PieceView.Pick;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Begins a season with what the program knows, and shows what it is planned from, piece by piece. */
public final class InputHandler {
  static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
  private static final Map<String, String> SAID =
      Map.of(
          "kept", "It is kept.", "removed", "It is taken out.", "begun", "The season is begun with what the program knows.", "back", "The last change is taken back.", "log",
          "The load before the season is taken from the log again.", "added", "They are in the season.");

  private final Workbench bench;
  private final Pages pages;
  private final SeasonDesk desk;
  private final Function<Context, Kept> season;
  private final PieceHandler pieces;

  /** @param season finds the season whose number was sent */
  public InputHandler(Workbench bench, Pages pages, SeasonDesk desk, Function<Context, Kept> season) {
    this.bench = bench;
    this.pages = pages;
    this.desk = desk;
    this.season = season;
    this.pieces = new PieceHandler(bench, pages, desk);
  }

  /** Registers its addresses. */
  public void add(RoutesConfig routes) {
    routes.get("/season/new", ctx -> begin(ctx, 200, Sent.NOTHING, ""));
    routes.post("/season/new", this::begun);
    routes.get("/season/input", ctx -> show(ctx, 200, season.apply(ctx), ""));
    routes.post("/season/input/add", this::addAthlete);
    routes.post("/season/input/undo", this::undo);
    routes.post("/season/input/log", this::fromLog);
    routes.post("/season/input/there", this::thereAgain);
    routes.get("/season/input/{piece}", ctx -> pieces.show(ctx, season.apply(ctx)));
    routes.post("/season/input/{piece}", ctx -> together(() -> pieces.save(ctx, season.apply(ctx))));
  }

  private void together(Runnable work) {
    bench.together(
        () -> {
          work.run();
          return true;
        });
  }

  private SeasonStart start() {
    return new SeasonStart(bench.workLog(), bench.load(), bench.care(), bench.ladder());
  }

  private void begin(Context ctx, int status, Sent sent, String field) {
    LocalDate today = desk.today();
    pages.show(ctx, status, "season/input/new", "A new season", "season", new BeginView(sent, field, today, today.plusWeeks(44).minusDays(1), Notes.counted(bench.athletes().all().size(), "athlete")));
  }

  /**
   * The form with which a season begins.
   *
   * @param sent what was written and refused
   * @param field beside which the sentence stands
   * @param first day that is offered
   * @param last day that is offered
   * @param squad how many athletes there are, in words
   */
  public record BeginView(Sent sent, String field, LocalDate first, LocalDate last, String squad) {
    /** The sentence beside a field, or empty. */
    public String refusal(String of) {
      return of.equals(field) ? sent.refused() : "";
    }
  }

  private void begun(Context ctx) {
    String field = "first";
    try {
      LocalDate first = Form.anyDate(Form.text(ctx, "first"));
      field = "last";
      LocalDate last = Form.anyDate(Form.text(ctx, "last"));
      String name = Form.text(ctx, "name");
      boolean named = !name.isEmpty() && name.length() <= 60 && Form.refusal(name, n -> desk.free(n, first)).isEmpty();
      field = named && !bench.athletes().all().isEmpty() ? "last" : "name";
      long id =
          bench.together(
              () -> {
                desk.free(name, first);
                SeasonInput before = desk.current().map(k -> desk.input(k.id())).orElse(null);
                return desk.keep(start().season(name, first, last, bench.athletes().all(), before, desk.today()));
              });
      done(ctx, id, "begun");
    } catch (RefusedException e) {
      begin(ctx, 422, Sent.of(ctx, String.valueOf(e.getMessage())), field);
    }
  }

  private void addAthlete(Context ctx) {
    Kept kept = season.apply(ctx);
    Athlete athlete = Addresses.athlete(Form.text(ctx, "athlete"), bench);
    change(
        ctx, kept, "added",
        in -> {
          List<Member> squad = new ArrayList<>(in.squad());
          squad.add(start().member(athlete, in.first(), null, desk.today()));
          return in.withSquad(squad);
        });
  }

  private void fromLog(Context ctx) {
    Kept kept = season.apply(ctx);
    change(
        ctx, kept, "log",
        in -> in.withSquad(in.squad().stream().map(m -> m.withPast(start().past(m.athlete(), in.first(), desk.today()))).toList()));
  }

  private void undo(Context ctx) {
    Kept kept = season.apply(ctx);
    try {
      int edition = Form.whole("edition", Form.text(ctx, "edition"));
      together(() -> desk.takeBack(kept.id(), edition));
      done(ctx, kept.id(), "back");
    } catch (RefusedException e) {
      show(ctx, 422, kept, String.valueOf(e.getMessage()));
    }
  }

  /** Takes back that somebody is away or a place closed. */
  private void thereAgain(Context ctx) {
    Kept kept = season.apply(ctx);
    try {
      Span span = new Span(Form.anyDate(Form.text(ctx, "from")), Form.anyDate(Form.text(ctx, "to")));
      String place = Form.text(ctx, "place");
      UnaryOperator<SeasonInput> change =
          place.isEmpty()
              ? in -> Happened.back(in, Form.id(Form.text(ctx, "athlete")), new Away(span, Form.oneOf(Away.Why.class, "reason", Form.text(ctx, "why"))))
              : in -> Happened.opened(in, place, span);
      together(() -> desk.change(kept.id(), change));
      ctx.redirect("/season?season=" + kept.id() + "&done=there", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, kept, String.valueOf(e.getMessage()));
    }
  }

  private void change(Context ctx, Kept kept, String done, UnaryOperator<SeasonInput> change) {
    try {
      together(() -> desk.change(kept.id(), change));
      done(ctx, kept.id(), done);
    } catch (RefusedException e) {
      show(ctx, 422, kept, String.valueOf(e.getMessage()));
    }
  }

  private static void done(Context ctx, long id, String done) {
    ctx.redirect("/season/input?season=" + id + "&done=" + done, HttpStatus.SEE_OTHER);
  }

  private void show(Context ctx, int status, Kept kept, String refused) {
    SeasonInput in = desk.input(kept.id());
    Set<Long> inIt = in.squad().stream().map(Member::id).collect(Collectors.toSet());
    String said = Form.text(ctx, "done");
    pages.show(
        ctx, status, "season/input/input", "What the season is planned from", "season",
        new InputView(
            kept.id(), kept.name(), DAY.format(in.first()) + " to " + DAY.format(in.last()),
            in.periods().stream().map(p -> "from " + DAY.format(p.from()) + ": " + p.kind().label()).toList(),
            in.meets().stream().map(m -> new Item(m.key(), m.name(), said(in, m))).toList(), in.venues().stream().map(v -> new Item(v.key(), v.name(), said(v))).toList(),
            in.squad().stream().map(m -> new Item(String.valueOf(m.id()), m.name(), said(m))).toList(),
            bench.athletes().all().stream().filter(a -> !inIt.contains(a.id())).map(a -> new Pick(String.valueOf(a.id()), a.name())).toList(),
            said.equals("begun") ? assumed(in) : List.of(), kept.edition(), kept.changedSince() ? kept.published() : 0, SAID.getOrDefault(said, ""), refused));
  }

  /** What a season that was just begun stands on and nobody has said. */
  private static List<String> assumed(SeasonInput in) {
    List<String> out = new ArrayList<>();
    out.add("Each athlete's days are those on which they came lately; their largest week is a quarter above the largest of the log, or what their level usually has.");
    out.add("Places and hours are those of the season before; else a meadow and a pit in the evening.");
    if (in.meets().isEmpty()) {
      out.add("There is no meet yet, and all of it is general preparation.");
    }
    return out;
  }

  private static String said(SeasonInput in, Meet m) {
    long main = in.squad().stream().filter(x -> x.entry(m).filter(i -> i == Entry.Importance.MAIN).isPresent()).count();
    long all = in.squad().stream().filter(x -> x.entry(m).isPresent()).count();
    return DAY.format(m.date()) + (all == 0 ? ", nobody yet" : ", " + Notes.counted(all, "athlete") + (main == 0 ? "" : ", main for " + main));
  }

  private static String said(Venue v) {
    String days = v.hours().keySet().stream().sorted().map(d -> d.getDisplayName(TextStyle.SHORT, Locale.ENGLISH)).collect(Collectors.joining(" "));
    return v.surface().label() + (v.sand() ? " with sand" : "") + (days.isEmpty() ? ", never open" : v.hours().size() == 7 ? ", every day" : ", " + days);
  }

  private static String said(Member m) {
    @Nullable LocalDate joins = m.joins();
    int away = m.away().size();
    return Athlete.fromSteps(m.athlete().rung()) + ", " + (m.days().size() == 7 ? "every day" : Notes.counted(m.days().size(), "day") + " a week")
        + (joins == null ? "" : ", joins " + DAY.format(joins)) + (away == 0 ? "" : ", away " + Notes.counted(away, "time"));
  }
}
