package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Entries;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import boundwright.web.page.Written;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Pain, medical holds, growing and session ratings of one athlete. A coach can open a hold here; only a clinician ends it. */
public final class CareHandler {
  private static final int RATED_DAYS = 28;
  private static final int MOST_OVERRIDES = 500;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;

  public CareHandler(Workbench bench, Pages pages, Gate gate) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
  }

  /** The page. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "said")) {
          case "pain" -> "The pain is kept. Ask again next morning whether it has settled.";
          case "stop" -> "Stop and refer to licensed medical staff. A medical hold is open; a coach cannot lift it.";
          case "settled" -> "Kept.";
          case "hold" -> "The medical hold is open. It ends with the clinician's name and a date.";
          case "ended" -> "The medical hold is ended, with name and date.";
          case "growing" -> "Kept. The limits for growing athletes hold from now on as set here.";
          case "again" -> "That was kept already and was not kept twice.";
          case "rating" -> "The session's rating is kept.";
          default -> "";
        };
    page(ctx, Written.said(said));
  }

  /** Takes an entry of pain; with a sign to refer it opens a hold. */
  public void pain(Context ctx) {
    change(
        ctx,
        "pain",
        a -> {
          boolean refer = !ctx.formParams("sign").isEmpty();
          Pain pain =
              new Pain(
                  0,
                  Form.date(Form.text(ctx, "date"), today()),
                  Form.text(ctx, "area"),
                  Form.whole("level of pain, 0 to 10,", Form.text(ctx, "level")),
                  settled(Form.text(ctx, "settled")),
                  refer);
          bench.care().addPain(a.id(), pain);
          return refer ? "stop" : "pain";
        });
  }

  /** Says whether a pain had settled by next morning. */
  public void settle(Context ctx) {
    change(
        ctx,
        "settle",
        a -> {
          Boolean settled = settled(Form.text(ctx, "settled"));
          if (settled == null) {
            throw new RefusedException("Say yes or no: had the pain settled by next morning?");
          }
          bench.care().setSettled(a.id(), number(ctx), settled);
          return "settled";
        });
  }

  /** Opens a medical hold. */
  public void hold(Context ctx) {
    change(
        ctx,
        "hold",
        a -> {
          String note = Form.text(ctx, "note");
          if (note.isEmpty() || note.length() > 200) {
            throw new RefusedException(
                "The note of a hold has 1 to 200 characters; this one has " + note.length() + ". Write who set it, no diagnosis.");
          }
          bench.care().openHold(a.id(), new MedicalHold(0, Form.date(Form.text(ctx, "from"), today()), note, null, null));
          return "hold";
        });
  }

  /** Ends a medical hold with a clinician's name and a date. */
  public void endHold(Context ctx) {
    change(
        ctx,
        "end",
        a -> {
          String by = Form.text(ctx, "clearedBy");
          String on = Form.text(ctx, "clearedOn");
          if (by.isEmpty() || on.isEmpty()) {
            throw new RefusedException("A medical hold ends with the clinician's name and a date, both. Nothing was changed: the hold stands.");
          }
          bench.care().endHold(a.id(), number(ctx), by, Form.anyDate(on));
          return "ended";
        });
  }

  /** Sets whether the athlete is growing. */
  public void growing(Context ctx) {
    change(
        ctx,
        "growing",
        a -> {
          String first = Form.text(ctx, "first");
          bench.care().setGrowing(a.id(), Form.text(ctx, "growing").equals("yes"), first.isEmpty() ? null : Form.date(first, today()));
          return "growing";
        });
  }

  /** Keeps how hard a session was found. */
  public void rating(Context ctx) {
    change(
        ctx,
        "rating",
        a -> {
          bench
              .care()
              .keep(
                  new SessionRating(
                      a.id(),
                      Form.date(Form.text(ctx, "date"), today()),
                      Form.number("rating", Form.text(ctx, "rating")),
                      Form.number("number of minutes", Form.text(ctx, "minutes"))));
          return "rating";
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
          token + ctx.path(),
          () -> {
            said[0] = change.make(athlete);
            return 0;
          });
      ctx.redirect("/athlete/" + athlete.id() + "/care?said=" + said[0], HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page(ctx, Written.refused(ctx, form, String.valueOf(e.getMessage())));
    }
  }

  private void page(Context ctx, Written written) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    List<SessionRating> ratings = new ArrayList<>(bench.care().ratings(athlete.id(), today().minusDays(RATED_DAYS)));
    Collections.reverse(ratings);
    CareView view =
        new CareView(
            athlete, bench.care().care(athlete.id(), today()), List.copyOf(ratings), bench.care().overrides(athlete.id(), MOST_OVERRIDES), written,
            gate.fresh(), today());
    pages.show(ctx, written.status(), "watching/care", "Care of " + athlete.name(), "squad", view);
  }

  private static @Nullable Boolean settled(String text) {
    return switch (text) {
      case "yes" -> Boolean.TRUE;
      case "no" -> Boolean.FALSE;
      default -> null;
    };
  }

  private static long number(Context ctx) {
    String number = ctx.pathParam("number");
    if (!number.matches("\\d{1,18}")) {
      throw new Turned(404, "No entry has the number " + number + ".");
    }
    return Long.parseLong(number);
  }

  private LocalDate today() {
    return LocalDate.now(bench.clock());
  }
}
