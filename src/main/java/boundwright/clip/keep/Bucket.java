package boundwright.clip.keep;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import software.amazon.awssdk.auth.credentials.AwsBasicCredentials;
import software.amazon.awssdk.auth.credentials.StaticCredentialsProvider;
import software.amazon.awssdk.core.ResponseInputStream;
import software.amazon.awssdk.core.checksums.RequestChecksumCalculation;
import software.amazon.awssdk.core.checksums.ResponseChecksumValidation;
import software.amazon.awssdk.core.exception.AbortedException;
import software.amazon.awssdk.core.exception.SdkException;
import software.amazon.awssdk.core.retry.RetryMode;
import software.amazon.awssdk.core.sync.RequestBody;
import software.amazon.awssdk.http.urlconnection.UrlConnectionHttpClient;
import software.amazon.awssdk.profiles.ProfileFile;
import software.amazon.awssdk.regions.Region;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.S3ClientBuilder;
import software.amazon.awssdk.services.s3.model.CompletedPart;
import software.amazon.awssdk.services.s3.model.GetObjectResponse;
import software.amazon.awssdk.services.s3.model.NoSuchKeyException;
import software.amazon.awssdk.services.s3.model.S3Exception;

/** The objects of one place in an S3-compatible store. Safe to use from many threads. */
final class Bucket implements AutoCloseable {
  /** A larger file goes in pieces of this size [bytes]: a store takes 5 GB at once, and a broken connection costs one piece. */
  static final int USUAL_PIECE = 64 << 20;

  private static final Duration TO_CONNECT = Duration.ofSeconds(5);
  /** Between two pieces of an answer. */
  private static final Duration TO_ANSWER = Duration.ofSeconds(30);

  private final BucketAddress address;
  private final int piece;
  private @Nullable S3Client client;

  /**
   * An object.
   *
   * @param key its name in the bucket
   * @param bytes its size
   * @param tag another content has another one
   */
  record Held(String key, long bytes, String tag) {}

  Bucket(BucketAddress address, int piece) {
    this.address = address;
    this.piece = piece;
  }

  /** Made when it is first needed: most commands touch no film. */
  private synchronized S3Client client() {
    S3Client made = client;
    if (made == null) {
      S3ClientBuilder builder =
          S3Client.builder()
              .region(Region.of(address.region()))
              .credentialsProvider(StaticCredentialsProvider.create(AwsBasicCredentials.create(address.key(), address.secret())))
              .forcePathStyle(true)
              // sums of newer date are not known to every store
              .requestChecksumCalculation(RequestChecksumCalculation.WHEN_REQUIRED)
              .responseChecksumValidation(ResponseChecksumValidation.WHEN_REQUIRED)
              .httpClientBuilder(UrlConnectionHttpClient.builder().connectionTimeout(TO_CONNECT).socketTimeout(TO_ANSWER))
              // what this machine's user has set up for other programs is none of ours
              .overrideConfiguration(c -> c.retryStrategy(RetryMode.STANDARD).defaultProfileFile(ProfileFile.aggregator().build()));
      URI endpoint = address.endpoint();
      made = (endpoint == null ? builder : builder.endpointOverride(endpoint)).build();
      client = made;
    }
    return made;
  }

  /** Keeps a file; when this returns the store has said that all of it is there. */
  void put(String key, Path file) {
    ask(
        () -> {
          long size = size(file);
          if (size <= piece) {
            client().putObject(r -> r.bucket(address.bucket()).key(key), RequestBody.fromFile(file));
          } else {
            putPieces(key, file, size);
          }
          long there = client().headObject(r -> r.bucket(address.bucket()).key(key)).contentLength();
          if (there != size) {
            throw new UncheckedIOException(new IOException(there + " of " + size + " bytes arrived"));
          }
          return there;
        });
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void putPieces(String key, Path file, long size) {
    String upload = client().createMultipartUpload(r -> r.bucket(address.bucket()).key(key)).uploadId();
    boolean whole = false;
    try (FileChannel in = FileChannel.open(file, StandardOpenOption.READ)) {
      List<CompletedPart> parts = new ArrayList<>();
      for (long at = 0; at < size; at += piece) {
        ByteBuffer bytes = ByteBuffer.allocate((int) Math.min(piece, size - at));
        while (bytes.hasRemaining() && in.read(bytes) >= 0) {
          // on until the piece is full
        }
        bytes.flip();
        int number = parts.size() + 1;
        String tag =
            client().uploadPart(r -> r.bucket(address.bucket()).key(key).uploadId(upload).partNumber(number), RequestBody.fromRemainingByteBuffer(bytes)).eTag();
        parts.add(CompletedPart.builder().partNumber(number).eTag(tag).build());
      }
      client().completeMultipartUpload(r -> r.bucket(address.bucket()).key(key).uploadId(upload).multipartUpload(m -> m.parts(parts)));
      whole = true;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      if (!whole) {
        giveUp(key, upload);
      }
    }
  }

  private void giveUp(String key, String upload) {
    try {
      client().abortMultipartUpload(r -> r.bucket(address.bucket()).key(key).uploadId(upload));
    } catch (SdkException e) {
      // its pieces belong to no film; a rule of the bucket clears them away
    }
  }

  /** Brings an object into a file; false if there is none. */
  boolean get(String key, Path to) {
    return ask(
        () -> {
          // into the file that is there, so that it stays its owner's alone
          try (ResponseInputStream<GetObjectResponse> in = client().getObject(r -> r.bucket(address.bucket()).key(key));
              OutputStream out = Files.newOutputStream(to)) {
            long copied = in.transferTo(out);
            if (copied != in.response().contentLength()) {
              throw new IOException(copied + " of " + in.response().contentLength() + " bytes came");
            }
            return true;
          } catch (NoSuchKeyException e) {
            return false;
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  /** All whose names begin so, by name. */
  List<Held> list(String begins) {
    return ask(
        () ->
            client().listObjectsV2Paginator(r -> r.bucket(address.bucket()).prefix(begins)).contents().stream()
                .map(o -> new Held(o.key(), o.size(), o.eTag()))
                .toList());
  }

  /** Deletes an object, if it is there. */
  void delete(String key) {
    ask(() -> client().deleteObject(r -> r.bucket(address.bucket()).key(key)));
  }

  /** What every name begins with. */
  String prefix() {
    return address.prefix();
  }

  private <T> T ask(Supplier<T> what) {
    try {
      return what.get();
    } catch (AbortedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("called off", e);
    } catch (SdkException | UncheckedIOException e) {
      if (Thread.currentThread().isInterrupted()) {
        throw new IllegalStateException("called off", e);
      }
      throw away(e);
    }
  }

  private FilmsAwayException away(RuntimeException e) {
    String why;
    if (e instanceof S3Exception said) {
      String code = said.awsErrorDetails() == null ? "" : String.valueOf(said.awsErrorDetails().errorCode());
      why = said.statusCode() == 403 ? "it does not let us in, status 403" : "it answers with status " + said.statusCode() + (code.isEmpty() || code.equals("null") ? "" : ", " + code);
    } else {
      Throwable deepest = e;
      for (Throwable next = e.getCause(); next != null; next = next.getCause()) {
        deepest = next;
      }
      why = deepest.getClass().getSimpleName() + (deepest instanceof NoSuchFileException || deepest.getMessage() == null ? "" : ": " + deepest.getMessage());
    }
    return new FilmsAwayException(
        "The films' store " + address + " cannot be used now (" + why + "). Nothing that is kept is lost; films that wait to be read go on when it is back. Try again, or look after the store and its keys.", e);
  }

  @Override
  public synchronized void close() {
    S3Client made = client;
    client = null;
    if (made != null) {
      made.close();
    }
  }
}
