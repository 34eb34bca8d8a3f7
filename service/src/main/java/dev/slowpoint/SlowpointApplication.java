package dev.slowpoint;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the service. */
@SpringBootApplication
public class SlowpointApplication {

    /** Starts the service with the given Spring arguments. */
    public static void main(String[] args) {
        SpringApplication.run(SlowpointApplication.class, args);
    }
}
