package boundwright.store.backup;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Puts what one database tells into another, row by row. */
public final class Refill implements Everything.Listener {
  private final EverythingInto into;
  private String table = "";

  /** @param into a database of the version that is told */
  public Refill(EverythingInto into) {
    this.into = into;
  }

  @Override
  public void version(int version) {}

  @Override
  public void table(String name) {
    table = name;
  }

  @Override
  public void row(Map<String, @Nullable Object> values) {
    into.row(table, values);
  }

  @Override
  public void number(String name, long largest) {
    into.number(name, largest);
  }
}
