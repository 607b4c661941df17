package boundwright.web.squad;

import boundwright.athlete.Surface;
import boundwright.footfall.LongDrill;
import boundwright.footfall.Routine;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The plan of a day: one form laid out as the sheet, so that every change and every button keeps what was written. */
public final class PlanHandler {
  private final Workbench bench;
  private final Pages pages;
  private final PlanSheet sheet;

  public PlanHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.sheet = new PlanSheet(bench);
  }

  /** The plan of the day asked for, or of today. */
  public void show(Context ctx) {
    LocalDate day = day(ctx);
    String said =
        switch (Form.text(ctx, "saved")) {
          case "" -> "";
          case "usual" -> "This is the usual plan now.";
          default -> "Kept.";
        };
    pages.show(ctx, 200, "squad/plan", "Plan", "plan", sheet.of(day, bench.settings().plan(day), said));
  }

  /** Takes the form, does what the button says, and keeps the plan if every drill can be read. */
  public void save(Context ctx) {
    LocalDate day = day(ctx);
    String action = Form.text(ctx, "action");
    if (action.equals("drop")) {
      bench.settings().drop(day);
      kept(ctx, day, "1");
      return;
    }
    DayPlan copied = copied(action);
    if (copied != null) {
      bench.settings().keep(day, copied);
      kept(ctx, day, "1");
      return;
    }
    String title = Form.text(ctx, "title");
    List<PlanView.Row> rows = new ArrayList<>(written(ctx));
    act(action, rows);
    List<Drill> drills = new ArrayList<>();
    List<PlanView.Row> checked = new ArrayList<>();
    List<String> refused = new ArrayList<>();
    for (PlanView.Row row : rows) {
      try {
        Drill drill = read(row);
        drills.add(drill);
        checked.add(PlanSheet.row(drill));
      } catch (RefusedException e) {
        String why = String.valueOf(e.getMessage());
        refused.add("Drill " + (checked.size() + 1) + ": " + why);
        checked.add(new PlanView.Row(row.sequence(), row.steps(), row.sets(), row.reps(), row.inSand(), why, 0, 0));
      }
    }
    if (!refused.isEmpty()) {
      refuse(ctx, day, title, checked, refused);
      return;
    }
    DayPlan plan = new DayPlan(title, drills, place(ctx));
    if (action.equals("usual")) {
      // the usual plan has no day, so it is done at the usual place
      bench.settings().keep(new DayPlan(title, drills));
    }
    bench.settings().keep(day, plan);
    kept(ctx, day, action.equals("usual") ? "usual" : "1");
  }

  /** A whole page for a button, only the sums for a change in the sheet. */
  private void kept(Context ctx, LocalDate day, String saved) {
    if (Pages.isPartial(ctx)) {
      pages.show(ctx, 200, "squad/sums", "Plan", "plan", sheet.sums(day, bench.settings().plan(day)));
    } else {
      ctx.redirect("/plan?day=" + day + "&saved=" + saved, HttpStatus.SEE_OTHER);
    }
  }

  private void refuse(Context ctx, LocalDate day, String title, List<PlanView.Row> rows, List<String> refused) {
    if (Pages.isPartial(ctx)) {
      pages.show(ctx, 422, "squad/sums", "Plan", "plan", new PlanView.Sums(0, 0, 0, 0, List.of(), refused));
      return;
    }
    PlanView view = sheet.refused(day, title, Form.text(ctx, "place"), surface(ctx), rows, refused);
    pages.show(ctx, 422, "squad/plan", "Plan", "plan", view);
  }

  private LocalDate day(Context ctx) {
    String text = Form.text(ctx, "day");
    return text.isEmpty() ? LocalDate.now(bench.clock()) : Form.anyDate(text);
  }

  /** The plan that an action copies, or null if it copies none. */
  private @Nullable DayPlan copied(String action) {
    if (action.equals("first")) {
      return DayPlan.FIRST;
    }
    if (action.equals("copy:usual")) {
      return bench.settings().usual();
    }
    return action.startsWith("copy:") ? bench.settings().plan(Form.anyDate(action.substring("copy:".length()))) : null;
  }

  private DayPlan.@Nullable Place place(Context ctx) {
    String name = Form.text(ctx, "place");
    return name.isEmpty() ? null : new DayPlan.Place(name, surface(ctx));
  }

  private Surface surface(Context ctx) {
    String name = Form.text(ctx, "surface");
    return name.isEmpty() ? bench.settings().kept().facility().surface() : Form.oneOf(Surface.class, "surface", name);
  }

  private static List<PlanView.Row> written(Context ctx) {
    List<String> sequences = ctx.formParams("sequence");
    List<PlanView.Row> rows = new ArrayList<>();
    for (int i = 0; i < sequences.size(); i++) {
      rows.add(
          new PlanView.Row(
              sequences.get(i).strip(),
              at(ctx.formParams("steps"), i),
              at(ctx.formParams("sets"), i),
              at(ctx.formParams("reps"), i),
              at(ctx.formParams("sand"), i).equals("yes"),
              "",
              0,
              0));
    }
    return rows;
  }

  private static void act(String action, List<PlanView.Row> rows) {
    if (action.equals("add") || action.startsWith("add:")) {
      if (rows.size() >= DayPlan.MOST_DRILLS) {
        throw new RefusedException("A plan has at most " + DayPlan.MOST_DRILLS + " drills. Take one out first.");
      }
      rows.add(PlanSheet.row(added(action)));
    } else if (action.matches("(up|down|remove):\\d{1,3}")) {
      int i = Integer.parseInt(action.substring(action.indexOf(':') + 1));
      if (i >= rows.size()) {
        return;
      }
      if (action.startsWith("remove")) {
        rows.remove(i);
      } else if (action.startsWith("up") && i > 0) {
        Collections.swap(rows, i, i - 1);
      } else if (action.startsWith("down") && i < rows.size() - 1) {
        Collections.swap(rows, i, i + 1);
      }
    }
  }

  private static Drill added(String action) {
    for (Routine r : Routine.values()) {
      if (action.equals("add:" + r.name())) {
        return DayPlan.usual(r);
      }
    }
    for (LongDrill d : LongDrill.values()) {
      if (action.equals("add:" + d.name())) {
        return DayPlan.usual(d);
      }
    }
    return DayPlan.usual(Routine.HOP_STEP);
  }

  private static Drill read(PlanView.Row row) {
    return new Drill(
        Sequence.parse(row.sequence()),
        row.steps().isBlank() ? null : Form.whole("number of approach steps", row.steps()),
        Form.whole("number of sets", row.sets()),
        Form.whole("number of reps", row.reps()),
        row.inSand());
  }

  private static String at(List<String> values, int i) {
    return i < values.size() ? values.get(i).strip() : "";
  }
}
