package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import boundwright.runway.DayPlan;
import boundwright.store.Workbench;
import boundwright.track.Group;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Adds a squad from a list, a line each: the name, then, after a comma, a tab or a semicolon and in any order, the level, the approach
 * steps and the foot. Who is there already is left as they are.
 */
public final class ManyHandler {
  private static final int MOST_LINES = 200;

  private final Workbench bench;
  private final Pages pages;

  public ManyHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** The empty list. */
  public void blank(Context ctx) {
    show(ctx, 200, new ManyView("", Level.BEGINNER.name(), "", List.of(), List.of(), List.of()));
  }

  /** Adds what can be read; what cannot stays in the field. */
  public void add(Context ctx) {
    Level otherwise = Form.oneOf(Level.class, "level", Form.has(ctx, "level") ? Form.text(ctx, "level") : Level.BEGINNER.name());
    List<String> lines = Form.text(ctx, "list").lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
    if (lines.size() > MOST_LINES) {
      throw new RefusedException("The list has " + lines.size() + " lines; the limit is " + MOST_LINES + ". Add it in two parts.");
    }
    String groupName = Form.text(ctx, "group");
    ManyView done = bench.reps().write(w -> addAll(lines, otherwise, groupName));
    if (done.added().isEmpty() && done.there().isEmpty() && done.refused().isEmpty()) {
      List<String> nobody = List.of("There is no name in the list. Write one in a line, for example: Wren, beginner");
      show(ctx, 422, new ManyView("", otherwise.name(), groupName, List.of(), List.of(), nobody));
    } else if (done.refused().isEmpty() && done.there().isEmpty()) {
      ctx.redirect("/", HttpStatus.SEE_OTHER);
    } else {
      show(ctx, done.refused().isEmpty() ? 200 : 422, done);
    }
  }

  private ManyView addAll(List<String> lines, Level otherwise, String groupName) {
    List<String> added = new ArrayList<>();
    List<String> there = new ArrayList<>();
    List<String> refused = new ArrayList<>();
    StringBuilder left = new StringBuilder();
    Set<Long> ids = new HashSet<>();
    for (String line : lines) {
      try {
        Athlete athlete = read(line, otherwise);
        Athlete known = bench.athletes().byName(athlete.name()).orElse(null);
        if (known != null) {
          there.add(known.name());
          ids.add(known.id());
        } else {
          ids.add(bench.athletes().add(athlete).id());
          added.add(athlete.name());
        }
      } catch (RefusedException e) {
        refused.add(line + ": " + e.getMessage());
        left.append(line).append('\n');
      }
    }
    if (!groupName.isEmpty() && !ids.isEmpty()) {
      join(groupName, ids);
    }
    if (!added.isEmpty() && !bench.settings().hasUsual()) {
      bench.settings().keep(DayPlan.FIRST);
    }
    return new ManyView(left.toString(), otherwise.name(), groupName, added, there, refused);
  }

  private void join(String name, Set<Long> ids) {
    Group wanted = new Group(0, name, ids);
    Group known = bench.attendance().groups().stream().filter(g -> g.name().equalsIgnoreCase(wanted.name())).findFirst().orElse(wanted);
    Set<Long> members = new HashSet<>(known.members());
    members.addAll(ids);
    bench.attendance().keep(new Group(known.id(), known.name(), members));
  }

  /** One line of the list. */
  static Athlete read(String line, Level otherwise) {
    String[] parts = line.split("[,;\t]", -1);
    Level level = otherwise;
    Foot foot = Foot.RIGHT;
    int steps = 0;
    for (int i = 1; i < parts.length; i++) {
      String part = parts[i].strip();
      Level said = level(part);
      if (said != null) {
        level = said;
      } else if (part.matches("\\d{1,3}( ?steps?)?")) {
        steps = Athlete.checkSteps(Integer.parseInt(part.replaceAll("\\D", "")));
      } else if (part.equalsIgnoreCase("R") || part.equalsIgnoreCase("right")) {
        foot = Foot.RIGHT;
      } else if (part.equalsIgnoreCase("L") || part.equalsIgnoreCase("left")) {
        foot = Foot.LEFT;
      } else if (!part.isEmpty()) {
        throw new RefusedException(
            "'" + part + "' is no level, number of steps or foot. Write beginner, intermediate or advanced; 0 to " + Athlete.MAX_STEPS
                + "; R or L.");
      }
    }
    return new Athlete(0, parts[0], level, foot, steps);
  }

  /** The level that a word begins: {@code b}, {@code inter}, {@code Advanced}; else null. */
  private static @Nullable Level level(String word) {
    String small = word.toLowerCase(Locale.ROOT);
    return small.isEmpty() ? null : Level.KNOWN.stream().filter(l -> l.label().startsWith(small)).findFirst().orElse(null);
  }

  private void show(Context ctx, int status, ManyView view) {
    pages.show(ctx, status, "squad/many", "Add athletes", "squad", view);
  }
}
