package boundwright.clip.scan;

import boundwright.clip.film.Frame;
import boundwright.clip.film.Picture;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * Writes the frames as pictures for the page while the film is read, in a thread of its own, so that stepping from frame to
 * frame needs no video reader in the browser and is exact. Pictures wider than {@value #WIDE} pixels are made smaller.
 */
public final class Stills implements AutoCloseable {
  /** Widest picture [px]. */
  public static final int WIDE = 960;
  private static final float QUALITY = 0.72f;
  private static final int WAITING = 4;
  private static final String FULL = "full.txt";

  /** A small picture on its way; the last one has none. */
  private record Job(int frame, @Nullable BufferedImage image) {}

  private final Path folder;
  private final BlockingQueue<Job> jobs = new ArrayBlockingQueue<>(WAITING);
  private final AtomicReference<@Nullable IOException> trouble = new AtomicReference<>();
  private final Thread thread;
  private boolean sized;

  /** Pictures into this folder, which is made if need be. */
  public Stills(Path folder) {
    this.folder = folder;
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    thread = new Thread(this::write, "stills");
    thread.setDaemon(true);
    thread.start();
  }

  /** The file of a frame. */
  public static Path file(Path folder, int frame) {
    return folder.resolve(String.format(Locale.ROOT, "%05d.jpg", frame));
  }

  /**
   * Size of the film's own picture.
   *
   * @param width [px]
   * @param height [px]
   */
  public record Full(int width, int height) {}

  /** Writes down how large the film's own pictures are, because a still may be smaller. */
  public static void full(Path folder, Full size) {
    try {
      Files.writeString(folder.resolve(FULL), size.width + " " + size.height);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The size of the film's own pictures, empty where none was written down. */
  public static Optional<Full> full(Path folder) {
    Path file = folder.resolve(FULL);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      Matcher m = Pattern.compile("([0-9]{1,5}) ([0-9]{1,5})").matcher(Files.readString(file).strip());
      return m.matches() ? Optional.of(new Full(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)))) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes a frame; the picture may be used again at once. */
  void take(Frame frame) throws InterruptedException {
    if (!sized) {
      full(folder, new Full(frame.picture().width(), frame.picture().height()));
      sized = true;
    }
    jobs.put(new Job(frame.index(), small(frame.picture())));
  }

  /** Takes every n-th pixel in both directions, averaged, when the picture is wide; a plain copy otherwise. */
  private static BufferedImage small(Picture p) {
    BufferedImage full = new BufferedImage(p.width(), p.height(), BufferedImage.TYPE_3BYTE_BGR);
    byte[] to = ((DataBufferByte) full.getRaster().getDataBuffer()).getData();
    byte[] from = p.rgb();
    for (int i = 0; i < 3 * p.width() * p.height(); i += 3) {
      to[i] = from[i + 2];
      to[i + 1] = from[i + 1];
      to[i + 2] = from[i];
    }
    if (p.width() <= WIDE) {
      return full;
    }
    int high = Math.max(1, (int) Math.round((double) p.height() * WIDE / p.width()));
    BufferedImage out = new BufferedImage(WIDE, high, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = out.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(full, 0, 0, WIDE, high, null);
    g.dispose();
    return out;
  }

  private void write() {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam how = writer.getDefaultWriteParam();
    how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    how.setCompressionQuality(QUALITY);
    try {
      for (Job job = jobs.take(); job.image != null; job = jobs.take()) {
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file(folder, job.frame).toFile())) {
          writer.setOutput(out);
          writer.write(null, new IIOImage(job.image, null, null), how);
        } catch (IOException e) {
          trouble.compareAndSet(null, e);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      writer.dispose();
    }
  }

  /** Waits until all are written. */
  @Override
  public void close() {
    try {
      jobs.put(new Job(-1, null));
      thread.join();
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
    }
    IOException e = trouble.get();
    if (e != null) {
      throw new UncheckedIOException("a picture could not be written", e);
    }
  }
}
