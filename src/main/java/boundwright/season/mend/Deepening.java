package boundwright.season.mend;

import boundwright.season.solve.Joint;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The fewest days of one athlete whose change leaves nothing refused, by iterative deepening from the first day that is: one day, then
 * two, and so on. A pair is looked for among all choices; on the way to three and more only choices of clearly different load are tried.
 */
final class Deepening {
  private static final int REACH = 41;
  private static final int MOST_DAYS = 4;
  private static final int ON_THE_WAY = 5;
  private static final int KEPT_PER_LEVEL = 60;
  /** So many first days of a pair, with every choice tried: a pair is often enough where a narrower look finds four days. */
  private static final int KEPT_OF_TWO = 400;

  private final Joint joint;
  private final int athlete;
  private final YearLine line;
  private final YearProblem p;
  private final int today;
  private final int noticed;
  private final BooleanSupplier stop;
  private @Nullable List<Change> best;
  private long[] bestKey = new long[0];

  /** A day and what is chosen on it. */
  record Change(int day, Choice to) {}

  private record Try(Change change, long left) {}

  /**
   * For an athlete.
   *
   * @param joint as it stands, with refusals; left as it is
   * @param today first day that may be changed
   * @param noticed first day that may be changed without short notice
   */
  Deepening(Joint joint, int athlete, int today, int noticed, BooleanSupplier stop) {
    this.joint = joint;
    this.athlete = athlete;
    this.line = joint.line(athlete).copy();
    this.p = line.problem();
    this.today = today;
    this.noticed = noticed;
    this.stop = stop;
  }

  /** The changes; null if none was found with so few days. */
  @Nullable List<Change> search() {
    if (refused() == 0) {
      return List.of();
    }
    for (int depth = 1; depth <= MOST_DAYS && best == null && !stop.getAsBoolean(); depth++) {
      deepen(depth, new ArrayList<>());
    }
    return best;
  }

  private long refused() {
    return line.total()[Level.REFUSED.at()];
  }

  private void deepen(int depth, List<Change> done) {
    YearLine.Refusal first = line.refusal(today);
    if (first == null || stop.getAsBoolean()) {
      return;
    }
    int refused = first.day();
    List<Try> tries = new ArrayList<>();
    for (int day = Math.max(today, refused - REACH); day <= refused; day++) {
      if (p.choices(day).size() > 1 && !changed(done, day)) {
        look(day, refused, depth, done, tries);
      }
    }
    if (depth > 1) {
      tries.sort(Comparator.comparingLong(Try::left));
      for (Try t : tries.subList(0, Math.min(depth == 2 ? KEPT_OF_TWO : KEPT_PER_LEVEL, tries.size()))) {
        Choice before = line.chosen(t.change().day());
        line.choose(t.change().day(), t.change().to());
        done.add(t.change());
        deepen(depth - 1, done);
        done.remove(done.size() - 1);
        line.choose(t.change().day(), before);
      }
    }
  }

  private static boolean changed(List<Change> done, int day) {
    return done.stream().anyMatch(c -> c.day() == day);
  }

  private void look(int day, int refused, int depth, List<Change> done, List<Try> tries) {
    Choice before = line.chosen(day);
    long left = refused();
    long here = cost(refused);
    for (Choice c : depth == 1 || (depth == 2 && done.isEmpty()) ? p.choices(day) : few(day)) {
      if (c.index() == before.index() || !p.sensible(day, c) || !joint.fits(athlete, day, c.venue())) {
        continue;
      }
      line.choose(day, c);
      if (depth == 1) {
        if (refused() == 0) {
          offer(done, new Change(day, c));
        }
      } else if (cost(refused) < here || refused() < left) {
        tries.add(new Try(new Change(day, c), 1000 * cost(refused) + refused()));
      }
    }
    line.choose(day, before);
  }

  private long cost(int day) {
    return line.dayCost(day, Level.REFUSED);
  }

  /** Rest, and choices of clearly different load. */
  private List<Choice> few(int day) {
    Map<Long, Choice> byLoad = new HashMap<>();
    long most = 1;
    for (Choice c : p.choices(day)) {
      most = Math.max(most, (long) c.right() + c.left());
    }
    for (Choice c : p.choices(day)) {
      long step = (long) (c.right() + c.left()) * ON_THE_WAY / most;
      byLoad.merge(c.rest() ? -1 : 2 * step + (c.hard() ? 1 : 0), c, (a, b) -> likePublished(day, b) ? b : a);
    }
    return List.copyOf(byLoad.values());
  }

  private boolean likePublished(int day, Choice c) {
    int at = p.published(day);
    return at >= 0 && p.choices(day).get(at).venue() == c.venue();
  }

  private void offer(List<Change> done, Change last) {
    long near = last.day() < noticed ? 1 : 0;
    long days = last.day();
    for (Change c : done) {
      near += c.day() < noticed ? 1 : 0;
      days += c.day();
    }
    long[] total = line.total();
    long[] key = new long[total.length + 2];
    key[0] = near;
    System.arraycopy(total, 0, key, 1, total.length);
    key[Level.PLACES.at() + 1] += joint.placeCost(athlete, last.day(), last.to().venue());
    key[key.length - 1] = -days;
    if (best == null || Arrays.compare(key, bestKey) < 0) {
      List<Change> all = new ArrayList<>(done);
      all.add(last);
      best = List.copyOf(all);
      bestKey = key;
    }
  }
}
