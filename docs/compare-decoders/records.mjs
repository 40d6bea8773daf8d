// The records of one FIT file as the independent decoder sees them.
import { readFileSync } from 'node:fs';
import { Decoder, Stream } from '@garmin/fitsdk';

const RECORD = 20;
const FIELDS = ['power', 'heartRate', 'cadence', 'distance', 'altitude', 'speed'];

export const columns = ['timestamp', ...FIELDS];

/** Rows of numbers or null in the order of the file, and what stopped the decoder, if anything. */
export function records(path) {
  const rows = [];
  const decoder = new Decoder(Stream.fromBuffer(readFileSync(path)));
  let errors = [];
  try {
    ({ errors } = decoder.read({
      convertDateTimesToDates: false,
      mergeHeartRates: false,
      mesgListener: (number, message) => {
        if (number === RECORD && message.timestamp !== undefined) rows.push(row(message));
      },
    }));
  } catch (error) {
    errors = [error];
  }
  return { rows, errors: errors.map(error => String(error.message ?? error)) };
}

function row(message) {
  const cadence = message.cadence256
    ?? (message.cadence === undefined ? undefined : message.cadence + (message.fractionalCadence ?? 0));
  return [
    message.timestamp,
    message.power,
    message.heartRate,
    cadence,
    message.distance,
    message.enhancedAltitude ?? message.altitude,
    message.enhancedSpeed ?? message.speed,
  ].map(value => (typeof value === 'number' && Number.isFinite(value) ? value : null));
}
