package boundwright.store;

import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** The two ways to the database for the packages inside the store; see {@link Database}. */
public interface Transactions {
  /** Reads; inside a write of this thread it sees what was written so far. */
  <T> T read(Function<Handle, T> work);

  /** Writes, all or nothing, on disk when it returns; joins the write of this thread if there is one. */
  <T> T write(Function<Handle, T> work);
}
