package boundwright.season.solve;

import ai.timefold.solver.core.api.score.director.ScoreDirector;
import ai.timefold.solver.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import boundwright.season.Session;
import boundwright.season.year.Choice;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * What the search tries at random: another choice for a day; a session larger or smaller by a unit; contacts from one day to another of
 * the same athlete; a session moved to a day near by; two athletes who change places on a day.
 */
public final class Rearrangements implements MoveIteratorFactory<Sheet, Rearrange> {
  private static final int NEAR_DAYS = 6;
  private static final int FAR_DAYS = 28;

  private List<List<Cell>> byAthlete = List.of();
  private List<List<Cell>> byDay = List.of();

  /** For the library. */
  public Rearrangements() {}

  @Override
  public void phaseStarted(ScoreDirector<Sheet> director) {
    List<List<Cell>> athletes = new ArrayList<>();
    List<List<Cell>> days = new ArrayList<>();
    for (Cell c : director.getWorkingSolution().getCells()) {
      at(athletes, c.athlete()).add(c);
      at(days, c.day()).add(c);
    }
    byAthlete = athletes.stream().filter(l -> !l.isEmpty()).toList();
    byDay = days.stream().filter(l -> l.size() > 1).toList();
  }

  private static List<Cell> at(List<List<Cell>> lists, int i) {
    while (lists.size() <= i) {
      lists.add(new ArrayList<>());
    }
    return lists.get(i);
  }

  @Override
  public long getSize(ScoreDirector<Sheet> director) {
    return 100L * director.getWorkingSolution().getCells().size();
  }

  @Override
  public Iterator<Rearrange> createOriginalMoveIterator(ScoreDirector<Sheet> director) {
    throw new UnsupportedOperationException("moves are drawn at random");
  }

  @Override
  public Iterator<Rearrange> createRandomMoveIterator(ScoreDirector<Sheet> director, Random random) {
    return new Iterator<>() {
      @Override
      public boolean hasNext() {
        return true;
      }

      @Override
      public Rearrange next() {
        Rearrange move = null;
        while (move == null) {
          move = draw(random);
        }
        return move;
      }
    };
  }

  private @Nullable Rearrange draw(Random random) {
    List<Cell> line = byAthlete.get(random.nextInt(byAthlete.size()));
    int i = random.nextInt(line.size());
    Cell cell = line.get(i);
    return switch (random.nextInt(8)) {
      case 0 -> new Rearrange(new Cell[] {cell}, new int[] {random.nextInt(cell.choices().size())});
      case 1 -> resized(cell, random.nextBoolean());
      case 2, 3, 4 -> shifted(cell, near(line, i, FAR_DAYS, random), random);
      case 5, 6 -> moved(cell, near(line, i, NEAR_DAYS, random));
      default -> byDay.isEmpty() ? null : exchanged(byDay.get(random.nextInt(byDay.size())), random);
    };
  }

  private static Cell near(List<Cell> line, int i, int days, Random random) {
    int from = i;
    int to = i;
    while (from > 0 && line.get(i).day() - line.get(from - 1).day() <= days) {
      from--;
    }
    while (to < line.size() - 1 && line.get(to + 1).day() - line.get(i).day() <= days) {
      to++;
    }
    return line.get(from + random.nextInt(to - from + 1));
  }

  private static @Nullable Rearrange resized(Cell cell, boolean up) {
    int to = size(cell, up);
    return to < 0 ? null : new Rearrange(new Cell[] {cell}, new int[] {to});
  }

  /** Contacts from one day to another. */
  private static @Nullable Rearrange shifted(Cell a, Cell b, Random random) {
    if (a == b) {
      return null;
    }
    boolean up = random.nextBoolean();
    int one = size(a, up);
    int other = size(b, !up);
    return one < 0 || other < 0 ? null : new Rearrange(new Cell[] {a, b}, new int[] {one, other});
  }

  /** The next larger or smaller session of the same kind at the same place. */
  private static int size(Cell cell, boolean up) {
    Choice now = cell.choice();
    Session session = now.session();
    if (session == null) {
      return -1;
    }
    int best = -1;
    int step = Integer.MAX_VALUE;
    for (Choice c : cell.choices()) {
      int more = up ? c.contacts() - now.contacts() : now.contacts() - c.contacts();
      if (c.session() != null && c.session().kind() == session.kind() && c.venue() == now.venue() && more > 0 && more < step) {
        best = c.index();
        step = more;
      }
    }
    return best;
  }

  /** The session of one day on another, and what was there on this. */
  private static @Nullable Rearrange moved(Cell a, Cell b) {
    if (a == b || a.choice().index() == b.choice().index()) {
      return null;
    }
    int there = alike(b, a.choice());
    int here = alike(a, b.choice());
    return there < 0 || here < 0 ? null : new Rearrange(new Cell[] {a, b}, new int[] {here, there});
  }

  /** Two athletes of a day do what the other did. */
  private static @Nullable Rearrange exchanged(List<Cell> day, Random random) {
    return moved(day.get(random.nextInt(day.size())), day.get(random.nextInt(day.size())));
  }

  /** The choice of a day that comes nearest: the same kind, the place if it can be, about as many contacts. */
  private static int alike(Cell cell, Choice what) {
    Session session = what.session();
    if (session == null) {
      return 0;
    }
    int best = -1;
    int distance = Integer.MAX_VALUE;
    for (Choice c : cell.choices()) {
      if (c.session() != null && c.session().kind() == session.kind()) {
        int d = 2 * Math.abs(c.contacts() - what.contacts()) + (c.venue() == what.venue() ? 0 : 1);
        if (d < distance) {
          best = c.index();
          distance = d;
        }
      }
    }
    return best;
  }
}
