package boundwright.web.athlete;

import boundwright.account.AccountRepository;
import boundwright.account.Club;
import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.footfall.Foot;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.transfer.Transfers;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import boundwright.web.page.TwoHands;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Adding, changing and erasing an athlete, with the tests and run-ups that the first guess rests on. */
public final class EditHandler {
  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final AccountRepository accounts;
  private final Transfers transfers;

  /** @param accounts in which the account of whoever is erased goes too */
  public EditHandler(Workbench bench, Pages pages, Gate gate, AccountRepository accounts, Transfers transfers) {
    this.transfers = transfers;
    this.accounts = accounts;
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The form for a new athlete. */
  public void blank(Context ctx) {
    show(ctx, 200, null, "", "", "");
  }

  /** Takes the form for a new athlete. */
  public void add(Context ctx) {
    try {
      String token = Entries.token(ctx);
      Athlete written = read(ctx, 0);
      boolean first = bench.once(token, () -> bench.athletes().add(written).id()).isPresent();
      long id = bench.taken(token).orElse(0L);
      if (!first && bench.athletes().byId(id).isEmpty()) {
        throw new RefusedException("This form was taken before, and the athlete was erased since. Nothing was added; open the form anew.");
      }
      ctx.redirect("/athlete/" + id + "/edit?said=" + (first ? "added" : "twice"), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, null, "athlete", String.valueOf(e.getMessage()), "");
    }
  }

  /** What is kept of an athlete. */
  public void edit(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "added" -> "Added. A standing test or a measured run-up below makes the first marks better; both can wait.";
          case "saved" -> "Saved. The marks were worked out again from the log." + meanwhile(ctx, Addresses.athlete(ctx, bench));
          case "person" -> "Saved.";
          case "twice" -> "That form was taken already and was not taken twice.";
          default -> "";
        };
    show(ctx, 200, Addresses.athlete(ctx, bench), "", "", said);
  }

  /** Takes the changed name, level, foot and rung. */
  public void save(Context ctx) {
    Athlete shown = Addresses.athlete(ctx, bench);
    TwoHands[] merged = new TwoHands[1];
    change(
        ctx,
        "athlete",
        () -> merged[0] == null ? "" : String.join(",", merged[0].theirs()),
        a ->
            bench.together(
                () -> {
                  // as it is kept now: somebody else may have saved since the address was read
                  Athlete now = bench.athletes().byId(shown.id()).orElse(shown);
                  TwoHands both = TwoHands.merge(ctx, fields(now));
                  merged[0] = both;
                  if (!both.both().isEmpty()) {
                    throw new RefusedException(both.asked(fields(now), EditHandler::called));
                  }
                  bench.athletes().update(read(ctx, now.id()));
                  return now;
                }));
  }

  /** The fields of an athlete's form, as it shows them. */
  static Map<String, String> fields(Athlete a) {
    Map<String, String> out = new LinkedHashMap<>();
    out.put("name", a.name());
    out.put("level", a.level().name());
    out.put("foot", a.takeOffFoot().name());
    out.put("rung", String.valueOf(a.rung()));
    return out;
  }

  private static String called(String field, String value) {
    return switch (field) {
      case "level" -> "level " + Form.oneOf(Level.class, "level", value).label();
      case "foot" -> "take-off foot " + Form.oneOf(Foot.class, "take-off foot", value).label();
      case "rung" -> value + " approach steps";
      default -> "name " + value;
    };
  }

  /** What somebody else changed while this form was open. */
  private static String meanwhile(Context ctx, Athlete athlete) {
    Map<String, String> now = fields(athlete);
    List<String> said = Stream.of(Form.text(ctx, "also").split(",", -1)).filter(now::containsKey).map(f -> called(f, now.getOrDefault(f, ""))).toList();
    return said.isEmpty() ? "" : " Changed meanwhile by somebody else, and it stands: " + String.join(", ", said) + ".";
  }

  /** Adds a standing test or best mark. */
  public void addTest(Context ctx) {
    change(
        ctx,
        "test",
        a -> {
          KnownMark.Kind kind = Form.oneOf(KnownMark.Kind.class, "test", Form.text(ctx, "kind"));
          String steps = Form.text(ctx, "steps");
          KnownMark mark =
              new KnownMark(
                  0,
                  kind,
                  steps.isEmpty() ? 0 : Form.whole("number of approach steps", steps),
                  unit().read("distance", Form.text(ctx, "distance")),
                  Form.date(Form.text(ctx, "date"), today()));
          bench.once(
              Entries.token(ctx),
              () -> {
                bench.athletes().addKnownMark(a.id(), mark);
                return a.id();
              });
        });
  }

  /** Takes a test out. */
  public void removeTest(Context ctx) {
    change(ctx, "test", a -> bench.athletes().removeKnownMark(a.id(), number(ctx)));
  }

  /** Adds a measured run-up. */
  public void addRunUp(Context ctx) {
    change(
        ctx,
        "runup",
        a -> {
          String speed = Form.text(ctx, "speed");
          MeasuredRunUp run =
              new MeasuredRunUp(
                  0,
                  Form.whole("number of steps", Form.text(ctx, "steps")),
                  unit().read("length", Form.text(ctx, "length")),
                  speed.isEmpty() ? null : Form.number("speed", speed),
                  Form.date(Form.text(ctx, "date"), today()));
          bench.once(
              Entries.token(ctx),
              () -> {
                bench.athletes().addRunUp(a.id(), run);
                return a.id();
              });
        });
  }

  /** Takes a run-up out. */
  public void removeRunUp(Context ctx) {
    change(ctx, "runup", a -> bench.athletes().removeRunUp(a.id(), number(ctx)));
  }

  /** Erases an athlete and every rep, once the name was written out. */
  public void erase(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    if (!Form.text(ctx, "name").equalsIgnoreCase(athlete.name())) {
      show(
          ctx,
          422,
          athlete,
          "erase",
          "Nothing was erased: '" + Form.text(ctx, "name") + "' is not the name of this athlete. Write it as it stands above.",
          "");
      return;
    }
    bench.erase(athlete.id());
    accounts.forgetAthlete(gate.caller(ctx).club(), athlete.id());
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  /** A change that can be refused. */
  private interface Change {
    void make(Athlete athlete);
  }

  private void change(Context ctx, String form, Change change) {
    change(ctx, form, () -> "", change);
  }

  private void change(Context ctx, String form, Supplier<String> also, Change change) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      change.make(athlete);
      bench.logbook().relearn(athlete.id());
      ctx.redirect("/athlete/" + athlete.id() + "/edit?said=saved" + (also.get().isEmpty() ? "" : "&also=" + also.get()), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, athlete, form, String.valueOf(e.getMessage()), "");
    }
  }

  private static Athlete read(Context ctx, long id) {
    String steps = Form.text(ctx, "rung");
    return new Athlete(
        id,
        Form.text(ctx, "name"),
        Form.oneOf(Level.class, "level", Form.text(ctx, "level")),
        Form.oneOf(Foot.class, "take-off foot", Form.text(ctx, "foot")),
        Form.whole("approach steps", steps.isEmpty() ? "0" : steps));
  }

  /** The page; {@code form} is the one that was refused. */
  public void show(Context ctx, int status, @Nullable Athlete athlete, String form, String refused, String said) {
    Map<String, String> written = new HashMap<>();
    if (!form.isEmpty()) {
      for (Map.Entry<String, List<String>> field : ctx.formParamMap().entrySet()) {
        written.put(field.getKey(), Form.text(ctx, field.getKey()));
      }
    }
    Profile profile = athlete == null ? null : bench.athletes().profile(bench.athletes().byId(athlete.id()).orElse(athlete));
    EditView view =
        new EditView(
            profile, unit(), Map.copyOf(written), form, refused, said, today().toString(), gate.fresh(),
            athlete == null ? null : PersonView.of(bench.people(), athlete.id(), today()),
            athlete == null ? List.of() : transfers.others(gate.caller(ctx).club()),
            athlete == null ? "" : transfers.offeredTo(gate.caller(ctx).club(), athlete.id()).map(Club::name).orElse(""));
    pages.show(ctx, status, "athlete/edit", athlete == null ? "New athlete" : athlete.name(), "squad", view);
  }

  private static long number(Context ctx) {
    String number = ctx.pathParam("number");
    if (!number.matches("\\d{1,18}")) {
      throw new Turned(404, "No entry has the number " + number + ".");
    }
    return Long.parseLong(number);
  }

  private LengthUnit unit() {
    return bench.settings().settings().unit();
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
