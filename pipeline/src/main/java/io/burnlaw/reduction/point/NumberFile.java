package io.burnlaw.reduction.point;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/**
 * Keeps numbers in an unnamed file. The system deletes it when the process ends, however it ends. Where no file can be
 * made, or the disk is full, the numbers stay in memory, and nothing is lost.
 */
public final class NumberFile implements NumberStore, AutoCloseable {

    /** Of one process in one folder: more than it ever has open. */
    private static final int MOST_FILES = 1000;

    private final Optional<FileChannel> file;
    private final AtomicLong end = new AtomicLong();

    private NumberFile(Optional<FileChannel> file) {
        this.file = file;
    }

    /**
     * Opens one.
     *
     * @param place a folder, or where one is going to be; beside it the file is made, or else among the temporary files
     * @return the store, to be closed when nothing of it is wanted any more
     */
    public static NumberFile beside(Path place) {
        Path folder = place.toAbsolutePath().normalize().getParent();
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        return new NumberFile(open(folder == null ? temporary : folder).or(() -> open(temporary)));
    }

    private static Optional<FileChannel> open(Path folder) {
        for (int number = 0; number < MOST_FILES; number++) {
            Path name = folder.resolve(".burnlaw-" + ProcessHandle.current().pid() + "-" + number);
            try {
                // on Linux the name is gone once the file is open, elsewhere when it is closed
                return Optional.of(FileChannel.open(
                        name,
                        StandardOpenOption.CREATE_NEW,
                        StandardOpenOption.READ,
                        StandardOpenOption.WRITE,
                        StandardOpenOption.DELETE_ON_CLOSE));
            } catch (FileAlreadyExistsException taken) {
                continue;
            } catch (IOException notHere) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    @Override
    public Supplier<double[]> keep(double[] numbers) {
        if (file.isPresent()) {
            ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * numbers.length);
            bytes.asDoubleBuffer().put(numbers);
            long start = end.getAndAdd(bytes.capacity());
            // by its length alone: the array itself would stay in the memory with whoever may ask for it
            int count = numbers.length;
            try {
                write(file.get(), bytes, start);
                return () -> read(file.get(), start, count);
            } catch (IOException full) {
                return NumberStore.MEMORY.keep(numbers);
            }
        }
        return NumberStore.MEMORY.keep(numbers);
    }

    private static void write(FileChannel file, ByteBuffer bytes, long start) throws IOException {
        while (bytes.hasRemaining()) {
            file.write(bytes, start + bytes.position());
        }
    }

    private static double[] read(FileChannel file, long start, int count) {
        ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * count);
        try {
            while (bytes.hasRemaining()) {
                if (file.read(bytes, start + bytes.position()) < 0) {
                    throw new IOException("the file with the courses of the firings was cut off");
                }
            }
        } catch (IOException lost) {
            throw new UncheckedIOException(lost);
        }
        double[] numbers = new double[count];
        bytes.flip().asDoubleBuffer().get(numbers);
        return numbers;
    }

    @Override
    public void close() {
        file.ifPresent(open -> {
            try {
                open.close();
            } catch (IOException left) {
                throw new UncheckedIOException(left);
            }
        });
    }
}
