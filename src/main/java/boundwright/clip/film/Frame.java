package boundwright.clip.film;

/**
 * One frame of a film with its own time.
 *
 * @param index 0 for the first frame that was decoded
 * @param pts presentation time as the file has it, in units of the film's time base
 * @param time_s the same [s]: {@code pts} times the time base, never a count divided by a rate
 * @param picture upright; its bytes are used again for the next frame, so copy what must last
 */
public record Frame(int index, long pts, double time_s, Picture picture) {}
