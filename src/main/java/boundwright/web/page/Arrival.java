package boundwright.web.page;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.HttpException;
import org.jspecify.annotations.Nullable;

/**
 * Lets what is sent arrive before anything is done with it: a bounded number at a time, so that senders who stall or drop off hold up each
 * other and not the pages, and with a sentence for those who did not come to the end.
 */
public final class Arrival {
  /** Bodies with files that arrive at once (judgement: a squad's phones send one by one; each may wait 30 s for a piece). */
  static final int MOST_FILES = 12;
  /** Other bodies that arrive at once; the server has 250 threads. */
  static final int MOST_FORMS = 96;

  private final Semaphore files = new Semaphore(MOST_FILES);
  private final Semaphore forms = new Semaphore(MOST_FORMS);

  /**
   * Reads the whole body; afterwards nobody waits for its sender any more.
   *
   * @throws Turned if too many are arriving, the sender stopped, or the disk is full
   */
  void whole(Context ctx) {
    boolean file = ctx.isMultipart();
    Semaphore room = file ? files : forms;
    if (!room.tryAcquire()) {
      throw new Turned(
          503,
          (file ? "Too many files are arriving at once, " : "Too much is arriving at once, ") + (file ? MOST_FILES : MOST_FORMS)
              + " already. Nothing of this one was kept; send it again in a minute.");
    }
    try {
      if (file) {
        ctx.formParamMap();
      } else {
        ctx.bodyAsBytes();
      }
    } catch (HttpResponseException e) {
      throw e;
    } catch (RuntimeException e) {
      Turned outside = said(e);
      throw outside == null ? e : outside;
    } finally {
      room.release();
    }
  }

  /** Reads the body to nowhere, if there is room: a browser cut off while it sends shows its own error instead of our sentence. */
  void passOver(Context ctx) {
    if (files.tryAcquire()) {
      try {
        ctx.req().getInputStream().transferTo(OutputStream.nullOutputStream());
      } catch (IOException ignored) {
        // the sender has left, and the answer goes nowhere either
      } finally {
        files.release();
      }
    }
  }

  /** A failure of the network, the disk or the sender as an answer in words; null if it is none of them, and so a fault of the program. */
  public static @Nullable Turned said(Throwable failure) {
    boolean brokeOff = false;
    boolean unreadable = false;
    for (Throwable t = failure; t != null; t = t.getCause()) {
      String message = String.valueOf(t.getMessage()).toLowerCase(Locale.ROOT);
      if (t instanceof IOException && (message.contains("no space left") || message.contains("quota exceeded") || message.contains("not enough space"))) {
        return new Turned(507, "The disk of the laptop is full, so nothing of this was kept; what was kept before is safe. Free some space there and send it again.");
      }
      brokeOff |= t instanceof TimeoutException || t instanceof IOException;
      unreadable |= t instanceof HttpException http && http.getCode() == HttpStatus.BAD_REQUEST.getCode();
    }
    if (unreadable && !brokeOff) {
      return new Turned(400, "What was sent is no form that can be read, perhaps for a strange character in the file's name. Nothing of it was kept. Name the file anew and send it again.");
    }
    return brokeOff ? new Turned(408, "What was sent broke off before its end, so nothing of it was kept. Send it again.") : null;
  }
}
