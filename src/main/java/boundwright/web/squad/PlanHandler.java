package boundwright.web.squad;

import boundwright.footfall.Foot;
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
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The plan of the day: one form for all drills, so that every button also keeps what was written. */
public final class PlanHandler {
  private static final int MOST_DRILLS = 30;

  private final Workbench bench;
  private final Pages pages;

  public PlanHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The plan as it is kept. */
  public void show(Context ctx) {
    DayPlan plan = bench.settings().plan();
    List<PlanView.Row> rows = plan.drills().stream().map(PlanHandler::row).toList();
    String said = Form.has(ctx, "saved") ? "The plan is kept." : "";
    pages.show(ctx, 200, "squad/plan", "Plan of the day", "plan", new PlanView(plan.title(), rows, said));
  }

  /** Takes the form, does what the button says, and keeps the plan if every drill can be read. */
  public void save(Context ctx) {
    String title = Form.text(ctx, "title");
    List<PlanView.Row> rows = new ArrayList<>(written(ctx));
    act(Form.text(ctx, "action"), rows);
    List<Drill> drills = new ArrayList<>();
    List<PlanView.Row> checked = new ArrayList<>();
    boolean right = true;
    for (PlanView.Row row : rows) {
      try {
        Drill drill = read(row);
        drills.add(drill);
        checked.add(row(drill));
      } catch (RefusedException e) {
        right = false;
        checked.add(
            new PlanView.Row(
                row.sequence(), row.steps(), row.sets(), row.reps(), row.inSand(), String.valueOf(e.getMessage()), ""));
      }
    }
    if (title.length() > 120) {
      throw new RefusedException("The plan's title has " + title.length() + " characters; the limit is 120. Shorten it.");
    }
    if (right) {
      bench.settings().keep(new DayPlan(title, drills));
      ctx.redirect("/plan?saved=1", HttpStatus.SEE_OTHER);
    } else {
      String said = "The plan was not kept: a drill cannot be read. Correct it below; nothing you wrote is gone.";
      pages.show(ctx, 422, "squad/plan", "Plan of the day", "plan", new PlanView(title, checked, said));
    }
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
              ""));
    }
    return rows;
  }

  private static void act(String action, List<PlanView.Row> rows) {
    if (action.equals("add") || action.startsWith("add:")) {
      if (rows.size() >= MOST_DRILLS) {
        throw new RefusedException("A plan has at most " + MOST_DRILLS + " drills. Take one out first.");
      }
      rows.add(blank(action));
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

  private static PlanView.Row blank(String action) {
    Routine drill = Routine.HOP_STEP;
    for (Routine r : Routine.values()) {
      if (action.equals("add:" + r.name())) {
        drill = r;
      }
    }
    return new PlanView.Row(drill.sequence().text(), "", "2", "3", true, "", "");
  }

  private static Drill read(PlanView.Row row) {
    return new Drill(
        Sequence.parse(row.sequence()),
        row.steps().isBlank() ? null : Form.whole("number of approach steps", row.steps()),
        Form.whole("number of sets", row.sets()),
        Form.whole("number of reps", row.reps()),
        row.inSand());
  }

  private static PlanView.Row row(Drill drill) {
    Integer steps = drill.steps();
    Sequence s = drill.sequence();
    return new PlanView.Row(
        s.text(),
        steps == null ? "" : String.valueOf(steps),
        String.valueOf(drill.sets()),
        String.valueOf(drill.reps()),
        drill.inSand(),
        "",
        s.size() + " contacts a rep: " + s.count(Foot.RIGHT) + " right, " + s.count(Foot.LEFT) + " left");
  }

  private static String at(List<String> values, int i) {
    return i < values.size() ? values.get(i).strip() : "";
  }
}
