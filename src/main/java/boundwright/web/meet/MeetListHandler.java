package boundwright.web.meet;

import boundwright.athlete.Athlete;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Sent;
import boundwright.web.page.TwoHands;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The list of meets, a meet's rules, and who stands on its list. */
public final class MeetListHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public MeetListHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** All meets, and the form for a new one. */
  public void list(Context ctx) {
    list(ctx, 200, Sent.NOTHING);
  }

  /** Makes a meet. */
  public void add(Context ctx) {
    try {
      String token = Entries.token(ctx);
      MeetSheet sheet = read(ctx, 0, event(Form.text(ctx, "event")), entrants(ctx));
      long id = bench.once(token, () -> bench.meets().add(sheet).id()).orElse(0L);
      ctx.redirect(id == 0 ? "/meet" : "/meet/" + id, HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      list(ctx, 422, Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  /** A meet's rules, list and attempts, to be changed. */
  public void edit(Context ctx) {
    edit(ctx, 200, MeetHandler.sheet(ctx, bench), "", Sent.NOTHING, Form.has(ctx, "saved") ? "Kept." : "");
  }

  /** Changes name, day, board and rules. */
  public void save(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    change(
        ctx,
        sheet,
        "meet",
        () ->
            bench.together(
                () -> {
                  // as it is kept now: somebody else may have saved since the address was read
                  Map<String, String> now = MeetRulesForm.of(bench.meets().byId(sheet.id()).orElse(sheet), Sent.NOTHING, unit()).fields();
                  TwoHands both = TwoHands.merge(ctx, now);
                  if (!both.both().isEmpty()) {
                    throw new RefusedException(both.asked(now, MeetRulesForm::called));
                  }
                  bench.meets().update(read(ctx, sheet.id(), sheet.event(), List.of()));
                  return both;
                }));
  }

  /** Puts one of the squad or rivals on the list. */
  public void enter(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    change(
        ctx,
        sheet,
        "list",
        () -> {
          List<Entrant> more = entrants(ctx);
          if (more.isEmpty()) {
            throw new RefusedException("Nobody was named. Tick athletes of the squad, or write rivals, one to a line.");
          }
          more.forEach(e -> bench.meets().enter(sheet.id(), e));
        });
  }

  /** Takes somebody from the list. */
  public void withdraw(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    change(ctx, sheet, "list", () -> bench.meets().withdraw(sheet.id(), Entries.number(ctx)));
  }

  /** Takes the meet out, once its name was written. */
  public void remove(Context ctx) {
    MeetSheet sheet = MeetHandler.sheet(ctx, bench);
    if (!Form.text(ctx, "name").equalsIgnoreCase(sheet.name())) {
      String refused = "Nothing was taken out: '" + Form.text(ctx, "name") + "' is not the name of this meet. Write it as it stands above.";
      edit(ctx, 422, sheet, "remove", Sent.of(ctx, refused), "");
      return;
    }
    bench.meets().remove(sheet.id());
    ctx.redirect("/meet", HttpStatus.SEE_OTHER);
  }

  private void change(Context ctx, MeetSheet sheet, String form, Runnable change) {
    try {
      change.run();
      ctx.redirect("/meet/" + sheet.id() + "/edit?saved=1", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      edit(ctx, 422, MeetHandler.sheet(ctx, bench), form, Sent.of(ctx, String.valueOf(e.getMessage())), "");
    }
  }

  private MeetSheet read(Context ctx, long id, Event event, List<Entrant> entrants) {
    LengthUnit unit = bench.settings().settings().unit();
    String board = Form.text(ctx, "board");
    String own = Form.text(ctx, "own");
    BoardDistance known = board.matches("\\d") && Integer.parseInt(board) < BoardDistance.ALL.size() ? BoardDistance.ALL.get(Integer.parseInt(board)) : null;
    if (known == null && own.isEmpty()) {
      throw new RefusedException("How far the board lies from the sand is missing. Choose it from the list, or write the distance.");
    }
    String scoring = Form.text(ctx, "scoring");
    Scoring table = scoring.isEmpty() ? null : Form.oneOf(Scoring.class, "table of points", scoring);
    return new MeetSheet(
        id,
        Form.text(ctx, "name"),
        day(Form.text(ctx, "date")),
        known == null ? "own board" : known.label(),
        known == null ? unit.read("board distance", own) : known.distance_m(),
        table,
        rules(ctx, event, table),
        entrants,
        List.of());
  }

  /** The long jump of a combined event has the first rounds only. */
  private static MeetRules rules(Context ctx, Event event, @Nullable Scoring table) {
    MeetRules alone =
        new MeetRules(
            event,
            null,
            Form.whole("number of first rounds", Form.text(ctx, "first")),
            Form.whole("number of rounds", Form.text(ctx, "rounds")),
            Form.whole("number of finalists", Form.text(ctx, "finalists")),
            Form.oneOf(MeetRules.FinalOrder.class, "order", Form.text(ctx, "order")),
            Form.oneOf(MeasureRule.class, "rule of measuring", Form.text(ctx, "measure")),
            Form.whole("number of seconds", Form.text(ctx, "seconds")));
    CombinedTable part = table == null ? null : table.combined();
    String wind = Form.text(ctx, "wind");
    return part == null
        ? alone
        : alone.of(new Combined(part, wind.isEmpty() ? CombinedWind.AVERAGE : Form.oneOf(CombinedWind.class, "rule of the wind", wind)), alone.firstRounds());
  }

  /** As the address or the form has it; the triple jump where it has none. */
  private static Event event(String written) {
    return written.isEmpty() ? Event.TRIPLE_JUMP : Form.oneOf(Event.class, "event", written.replace('-', '_').toUpperCase(Locale.ROOT));
  }

  /** A meet may lie ahead, so its day is not held to today. */
  private LocalDate day(String text) {
    return text.isBlank() ? today() : Form.anyDate(text);
  }

  /** The ticked, then the lines in their order: one who is called as an athlete of the squad is that athlete. */
  private List<Entrant> entrants(Context ctx) {
    List<Entrant> out = new ArrayList<>();
    for (String id : ctx.formParams("athlete")) {
      Athlete athlete = Addresses.athlete(id, bench);
      out.add(new Entrant(0, athlete.id(), athlete.name()));
    }
    List<Athlete> squad = bench.athletes().all();
    for (String line : Form.text(ctx, "rivals").split("[\\r\\n;]+", -1)) {
      String name = line.strip();
      if (!name.isEmpty()) {
        out.add(
            squad.stream()
                .filter(a -> a.name().equalsIgnoreCase(name))
                .findFirst()
                .map(a -> new Entrant(0, a.id(), a.name()))
                .orElseGet(() -> Entrant.rival(name)));
      }
    }
    return out;
  }

  private void list(Context ctx, int status, Sent sent) {
    MeetListView view =
        new MeetListView(
            bench.meets().all(), shown(ctx), bench.athletes().all(), bench.meets().settings().rules(), unit(), sent, gate.fresh(), today().toString());
    pages.show(ctx, status, "meet/list", "Meets", "meet", view);
  }

  /** A slip in the address shows the triple jump's form, a refused form says what is wrong with it. */
  private static Event shown(Context ctx) {
    String written = Form.text(ctx, "event");
    return written.equalsIgnoreCase("long-jump") || written.equals(Event.LONG_JUMP.name()) ? Event.LONG_JUMP : Event.TRIPLE_JUMP;
  }

  private void edit(Context ctx, int status, MeetSheet sheet, @Nullable String form, Sent sent, String said) {
    MeetEditView view =
        new MeetEditView(sheet, bench.athletes().all(), unit(), form == null ? "" : form, sent, said, today().toString());
    pages.show(ctx, status, "meet/edit", sheet.name(), "meet", view);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
