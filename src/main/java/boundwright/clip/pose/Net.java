package boundwright.clip.pose;

import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorByteSize;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyFromBuffer;
import static org.bytedeco.tensorflowlite.global.tensorflowlite.TfLiteTensorCopyToBuffer;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.tensorflowlite.BuiltinOpResolverWithXNNPACK;
import org.bytedeco.tensorflowlite.FlatBufferModel;
import org.bytedeco.tensorflowlite.Interpreter;
import org.bytedeco.tensorflowlite.InterpreterBuilder;
import org.bytedeco.tensorflowlite.TfLiteTensor;

/**
 * One network with one input and several outputs of floats. An interpreter serves one caller at a time, so calls wait
 * for each other; its memory is native and goes only with {@link #close}.
 *
 * <p>Built through the C++ interface because only there the vector kernels (XNNPACK) can be asked for: they are about
 * eight times quicker than the plain ones that the C interface takes.
 */
final class Net implements AutoCloseable {
  private static final int FLOAT = 4;

  private final FlatBufferModel model;
  private final BuiltinOpResolverWithXNNPACK kernels;
  private final Interpreter interpreter;
  private final FloatPointer in;
  private boolean closed;

  /** @throws RefusedException if the file is no network, or takes another number of input values */
  Net(Path file, int threads, int inputs) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads " + threads);
    }
    model = FlatBufferModel.BuildFromFile(file.toString());
    if (model == null || model.isNull()) {
      throw unreadable(file);
    }
    kernels = new BuiltinOpResolverWithXNNPACK();
    interpreter = new Interpreter((Pointer) null);
    boolean made = false;
    try (InterpreterBuilder builder = new InterpreterBuilder(model, kernels)) {
      made =
          builder.SetNumThreads(threads) == 0
              && builder.apply(interpreter) == 0
              && !interpreter.isNull()
              && interpreter.AllocateTensors() == 0
              && TfLiteTensorByteSize(interpreter.input_tensor(0)) == (long) FLOAT * inputs;
    } finally {
      if (!made) {
        free();
      }
    }
    if (!made) {
      throw unreadable(file);
    }
    in = new FloatPointer((long) inputs);
  }

  private void free() {
    interpreter.close();
    kernels.close();
    model.close();
  }

  private static RefusedException unreadable(Path file) {
    return new RefusedException(
        "The network file " + file.getFileName() + " cannot be opened. Delete it, so that it is fetched again, and try once more.");
  }

  /** The index of the output with this many values. */
  int outputOf(int values) {
    for (int i = 0; i < interpreter.outputs().capacity(); i++) {
      if (TfLiteTensorByteSize(interpreter.output_tensor(i)) == (long) FLOAT * values) {
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
    check(TfLiteTensorCopyFromBuffer(interpreter.input_tensor(0), in, (long) FLOAT * input.length));
    check(interpreter.Invoke());
    for (int k = 0; k < which.length; k++) {
      TfLiteTensor t = interpreter.output_tensor(which[k]);
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
      free();
      in.close();
    }
  }
}
