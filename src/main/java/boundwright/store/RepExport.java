package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import java.io.Writer;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/** Writes all reps of the store as a file that {@link RepImport} takes: athletes by name, each one's reps oldest first. */
public final class RepExport {
  private final Workbench workbench;

  /** Writes from this store. */
  public RepExport(Workbench workbench) {
    this.workbench = workbench;
  }

  /**
   * Writes the file; holds one athlete's reps at a time.
   *
   * @param out flushed, not closed
   * @return how many reps were written
   */
  public int write(Writer out) {
    Rows rows = new Rows(workbench.athletes().all());
    RepCsv.write(out, () -> rows);
    return rows.given;
  }

  private final class Rows implements Iterator<RepCsv.Row> {
    private final Iterator<Athlete> athletes;
    private Iterator<Rep> reps = List.<Rep>of().iterator();
    private String name = "";
    private int given;

    Rows(List<Athlete> squad) {
      this.athletes = squad.iterator();
    }

    @Override
    public boolean hasNext() {
      while (!reps.hasNext() && athletes.hasNext()) {
        Athlete athlete = athletes.next();
        name = athlete.name();
        reps = workbench.reps().inOrder(athlete.id()).iterator();
      }
      return reps.hasNext();
    }

    @Override
    public RepCsv.Row next() {
      if (!hasNext()) {
        throw new NoSuchElementException();
      }
      given++;
      return new RepCsv.Row(0, name, reps.next());
    }
  }
}
