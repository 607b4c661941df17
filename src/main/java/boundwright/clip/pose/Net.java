package boundwright.clip.pose;

import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterAllocateTensors;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterCreate;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterDelete;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetInputTensor;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetOutputTensor;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterGetOutputTensorCount;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterInvoke;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterOptionsCreate;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterOptionsDelete;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteInterpreterOptionsSetNumThreads;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteModelCreateFromFile;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteModelDelete;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorByteSize;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyFromBuffer;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyToBuffer;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.tensorflowlite.TfLiteInterpreter;
import org.bytedeco.tensorflowlite.TfLiteInterpreterOptions;
import org.bytedeco.tensorflowlite.TfLiteModel;
import org.bytedeco.tensorflowlite.TfLiteTensor;

/**
 * One network with one input and several outputs of floats. An interpreter serves one caller at a time, so calls wait
 * for each other; its memory is native and goes only with {@link #close}.
 */
final class Net implements AutoCloseable {
  private static final int FLOAT = 4;

  private final TfLiteModel model;
  private final TfLiteInterpreter interpreter;
  private final FloatPointer in;
  private boolean closed;

  /** @throws RefusedException if the file is no network, or takes another number of input values */
  Net(Path file, int threads, int inputs) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads " + threads);
    }
    TfLiteModel m = TfLiteModelCreateFromFile(file.toString());
    if (m == null || m.isNull()) {
      throw unreadable(file);
    }
    TfLiteInterpreterOptions options = TfLiteInterpreterOptionsCreate();
    TfLiteInterpreterOptionsSetNumThreads(options, threads);
    TfLiteInterpreter i = TfLiteInterpreterCreate(m, options);
    TfLiteInterpreterOptionsDelete(options);
    boolean made = i != null && !i.isNull();
    if (!made
        || TfLiteInterpreterAllocateTensors(i) != 0
        || TfLiteTensorByteSize(TfLiteInterpreterGetInputTensor(i, 0)) != (long) FLOAT * inputs) {
      if (made) {
        TfLiteInterpreterDelete(i);
      }
      TfLiteModelDelete(m);
      throw unreadable(file);
    }
    model = m;
    interpreter = i;
    in = new FloatPointer((long) inputs);
  }

  private static RefusedException unreadable(Path file) {
    return new RefusedException(
        "The network file " + file.getFileName() + " cannot be opened. Delete it, so that it is fetched again, and try once more.");
  }

  /** The index of the output with this many values. */
  int outputOf(int values) {
    for (int i = 0; i < TfLiteInterpreterGetOutputTensorCount(interpreter); i++) {
      if (TfLiteTensorByteSize(TfLiteInterpreterGetOutputTensor(interpreter, i)) == (long) FLOAT * values) {
        return i;
      }
    }
    throw new RefusedException(
        "The network file has no output of " + values + " values. It is not the one this program reads: delete it, so that it is fetched again.");
  }

  /** Runs the network once and fills {@code out[k]} from the output with index {@code which[k]}. */
  synchronized void run(float[] input, int[] which, float[][] out) {
    if (closed) {
      throw new IllegalStateException("the network is closed");
    }
    in.put(input, 0, input.length);
    check(TfLiteTensorCopyFromBuffer(TfLiteInterpreterGetInputTensor(interpreter, 0), in, (long) FLOAT * input.length));
    check(TfLiteInterpreterInvoke(interpreter));
    for (int k = 0; k < which.length; k++) {
      TfLiteTensor t = TfLiteInterpreterGetOutputTensor(interpreter, which[k]);
      try (FloatPointer p = new FloatPointer((long) out[k].length)) {
        check(TfLiteTensorCopyToBuffer(t, p, (long) FLOAT * out[k].length));
        p.get(out[k], 0, out[k].length);
      }
    }
  }

  private static void check(int status) {
    if (status != 0) {
      throw new IllegalStateException("the network answered with status " + status);
    }
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      TfLiteInterpreterDelete(interpreter);
      TfLiteModelDelete(model);
      in.close();
    }
  }
}
