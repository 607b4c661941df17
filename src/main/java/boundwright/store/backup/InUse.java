package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Says that a data folder is open. Any number of programs may have it open; whoever exchanges its files must be alone. The operating
 * system takes the lock away with a program that was killed.
 */
public final class InUse implements AutoCloseable {
  /** The name of the file that is locked. */
  static final String NAME = "boundwright.open";

  /** How often, and how long each time [ms], somebody who holds the folder alone is waited for. */
  private static final int PATIENCE = 60;
  private static final int STEP_MS = 50;

  /** Folders that this program has open: the operating system counts locks by program, not by opening. */
  private static final Map<Path, InUse> HERE = new HashMap<>();

  private final Path folder;
  private final FileChannel channel;
  private final FileLock lock;
  private int times = 1;

  private InUse(Path folder, FileChannel channel, FileLock lock) {
    this.folder = folder;
    this.channel = channel;
    this.lock = lock;
  }

  /** Opens a folder beside others. */
  public static InUse shared(Path folder) {
    InUse held = held(folder, true);
    // whoever opens a folder holds it alone for a moment to put in order what a kill left; a restore takes longer
    for (int tries = 0; held == null && tries < PATIENCE; tries++) {
      waitABit();
      held = held(folder, true);
    }
    if (held == null) {
      throw new RefusedException("A backup is being restored into " + folder + ". Wait until that is done and try again.");
    }
    return held;
  }

  /** Opens a folder that nobody else may have open. */
  public static InUse alone(Path folder) {
    InUse held = held(folder, false);
    if (held == null) {
      throw new RefusedException("boundwright is open with the folder " + folder + ", so nothing was changed. Close it (Ctrl-C where it runs) and try again.");
    }
    return held;
  }

  private static void waitABit() {
    try {
      Thread.sleep(STEP_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static @Nullable InUse held(Path folder, boolean shared) {
    Path real = folder.toAbsolutePath().normalize();
    synchronized (HERE) {
      InUse here = HERE.get(real);
      if (here != null) {
        if (!shared || !here.lock.isShared()) {
          return null;
        }
        here.times++;
        return here;
      }
      return open(real, shared);
    }
  }

  @SuppressWarnings("MustBeClosedChecker") // closed with this
  private static @Nullable InUse open(Path folder, boolean shared) {
    try {
      Private.file(folder.resolve(NAME));
      FileChannel channel = FileChannel.open(folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock(0, Long.MAX_VALUE, shared);
      if (lock == null) {
        channel.close();
        return null;
      }
      InUse made = new InUse(folder, channel, lock);
      HERE.put(folder, made);
      return made;
    } catch (IOException e) {
      throw new RefusedException("The data folder " + folder + " cannot be written: " + e.getMessage() + ". Check that you may write there, or give another with --data.", e);
    }
  }

  @Override
  public void close() {
    synchronized (HERE) {
      if (--times == 0) {
        HERE.remove(folder);
        try {
          channel.close();
        } catch (IOException e) {
          throw new RefusedException("The data folder " + folder + " could not be closed: " + e.getMessage() + ". What was logged is safe.", e);
        }
      }
    }
  }
}
