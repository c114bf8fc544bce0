import kits from '../../datasets/plateau-loop/kits.csv?raw';
import matches from '../../datasets/plateau-loop/matches.csv?raw';
import dray from '../../datasets/plateau-loop/prices-dray-and-daughter.csv?raw';
import northgate from '../../datasets/plateau-loop/prices-northgate-spares.csv?raw';
import quayside from '../../datasets/plateau-loop/prices-quayside-moto.csv?raw';
import exchange from '../../datasets/plateau-loop/rates_of_exchange.csv?raw';
import route from '../../datasets/plateau-loop/route.csv?raw';
import severity from '../../datasets/plateau-loop/severity.csv?raw';
import suppliers from '../../datasets/plateau-loop/suppliers.csv?raw';
import surfaces from '../../datasets/plateau-loop/surfaces.csv?raw';
import wear from '../../datasets/plateau-loop/wear.csv?raw';
import wearClasses from '../../datasets/plateau-loop/wear_classes.csv?raw';
import type { TripFiles } from './trip-file.ts';

/** The files of the invented trip, built into the app; tests read them from the folder instead. */
export function loadFiles(): TripFiles {
  return {
    'route.csv': route,
    'surfaces.csv': surfaces,
    'severity.csv': severity,
    'wear_classes.csv': wearClasses,
    'wear.csv': wear,
    'suppliers.csv': suppliers,
    'rates_of_exchange.csv': exchange,
    'prices-northgate-spares.csv': northgate,
    'prices-quayside-moto.csv': quayside,
    'prices-dray-and-daughter.csv': dray,
    'matches.csv': matches,
    'kits.csv': kits,
  };
}
