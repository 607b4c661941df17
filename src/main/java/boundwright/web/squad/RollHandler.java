package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.track.Attendance;
import boundwright.track.Group;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Who is here, in one sweep, and who is called together. */
public final class RollHandler {
  private static final RollView.Named NO_GROUP = new RollView.Named(0, "");

  private final Workbench bench;
  private final Pages pages;

  public RollHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** Everybody with a tick for those who are here. */
  public void here(Context ctx) {
    LocalDate day = day(ctx);
    Attendance.Roll roll = bench.attendance().on(day);
    List<Group> groups = bench.attendance().groups();
    String query = Form.text(ctx, "q");
    long only = number(Form.text(ctx, "group"));
    List<Athlete> shown = SquadDesk.asked(roll.all(), new SquadView.Asked(query, only, "", false), groups);
    Set<Long> ticked = new HashSet<>(roll.here().stream().map(Athlete::id).toList());
    pages.show(
        ctx, 200, "squad/here", "Who is here", "squad",
        new RollView(day, Figures.day(day), lines(shown, groups), ticked, groups, query, only, roll.said(), NO_GROUP, ""));
  }

  /** Keeps who is here: of those who were shown the ticked ones, or one group, everybody or nobody. */
  public void keep(Context ctx) {
    LocalDate day = day(ctx);
    Attendance.Roll roll = bench.attendance().on(day);
    String action = Form.text(ctx, "action");
    Set<Long> here = new HashSet<>(roll.here().stream().map(Athlete::id).toList());
    if (action.equals("all")) {
      roll.all().forEach(a -> here.add(a.id()));
    } else if (action.equals("nobody")) {
      here.clear();
    } else if (action.startsWith("only:")) {
      here.clear();
      here.addAll(group(action.substring("only:".length())).members());
    } else {
      ctx.formParams("shown").forEach(s -> here.remove(number(s)));
      ctx.formParams("here").forEach(s -> here.add(number(s)));
    }
    bench.attendance().keepHere(day, here);
    // a tick is still to be put after "nobody"; else the coach is done
    boolean more = action.equals("nobody") || action.equals("all") || action.startsWith("only:");
    ctx.redirect(more ? "/here?day=" + day : "/", HttpStatus.SEE_OTHER);
  }

  /** A new group, or one that is there. */
  public void group(Context ctx) {
    String number = ctx.path().endsWith("/new") ? "" : ctx.pathParam("id");
    Group group = number.isEmpty() ? null : group(number);
    show(
        ctx, 200, group == null ? NO_GROUP : new RollView.Named(group.id(), group.name()), group == null ? Set.of() : group.members(), "");
  }

  /** Keeps a group's name and members, or takes it out. */
  public void keepGroup(Context ctx) {
    long id = ctx.path().endsWith("/new") ? 0 : group(ctx.pathParam("id")).id();
    if (Form.text(ctx, "action").equals("remove")) {
      bench.attendance().removeGroup(id);
      ctx.redirect("/here", HttpStatus.SEE_OTHER);
      return;
    }
    Set<Long> members = new HashSet<>();
    ctx.formParams("here").forEach(s -> members.add(number(s)));
    try {
      bench.attendance().keep(new Group(id, Form.text(ctx, "name"), members));
      ctx.redirect("/here", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      show(ctx, 422, new RollView.Named(id, Form.text(ctx, "name")), members, String.valueOf(e.getMessage()));
    }
  }

  private void show(Context ctx, int status, RollView.Named named, Set<Long> members, String said) {
    LocalDate day = LocalDate.now(bench.clock());
    List<Group> groups = bench.attendance().groups();
    pages.show(
        ctx, status, "squad/group", named.id() == 0 ? "New group" : named.name(), "squad",
        new RollView(day, "", lines(bench.athletes().all(), groups), members, groups, "", 0, "", named, said));
  }

  private static List<RollView.Line> lines(List<Athlete> athletes, List<Group> groups) {
    return athletes.stream().map(a -> new RollView.Line(a, String.join(", ", Attendance.groupsOf(a, groups)))).toList();
  }

  private Group group(String number) {
    long id = number(number);
    return bench.attendance().groups().stream()
        .filter(g -> g.id() == id)
        .findFirst()
        .orElseThrow(() -> new Turned(404, "There is no group with the number " + number + ". It may have been taken out."));
  }

  private LocalDate day(Context ctx) {
    String text = Form.text(ctx, "day");
    return text.isEmpty() ? LocalDate.now(bench.clock()) : Form.anyDate(text);
  }

  private static long number(String text) {
    return text.matches("\\d{1,18}") ? Long.parseLong(text) : 0;
  }
}
