package boundwright.clip.desk;

/** The queue of clips to be read. It survives a restart: what waited or was being read is taken up again. */
public interface ClipQueue extends AutoCloseable {
  /** What the queue has done for a clip. Runs on a thread of the queue; an interrupt calls it off. */
  interface Worker {
    /**
     * Reads one clip to its end; never throws for a clip that is refused. What it throws otherwise is tried again later: a few times, and as
     * often as it takes for a {@link boundwright.clip.keep.FilmsAwayException}.
     */
    void read(long clipId) throws InterruptedException;
  }

  /** Starts working; before that, clips only wait. */
  void start(Worker worker);

  /**
   * Adds a clip that nobody reads now, or does nothing if it waits in the queue already. Can be part of a write of the store.
   */
  void add(long clipId);

  /**
   * Adds a clip that is not in the queue; one that another machine has begun to read meanwhile stays that machine's.
   */
  void addMissing(long clipId);

  /** Takes a clip out; one that is being read is called off. */
  void cancel(long clipId);

  /** Stops the workers; what is left stays in the queue. */
  @Override
  void close();
}
