import { createContext, useContext } from 'react';
import type { AppServices } from './services.ts';

export const ServicesContext = createContext<AppServices | null>(null);

/** @throws Error outside of a ServicesContext */
export function useServices(): AppServices {
  const services = useContext(ServicesContext);
  if (!services) throw new Error('useServices requires a ServicesContext, got none');
  return services;
}
